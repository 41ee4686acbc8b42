"""Why something is refused, in sentences. {name}s are the facts that a refusal carries."""

from collections.abc import Mapping

REASONS: Mapping[str, str] = {
    "request": "The page asked with a “{member}” that cannot be one. Load the page again.",
    "blank": "Nothing stands here. {example}",
    "unreadable": "“{text}” is not a number. {example}",
    "ambiguous": "Is “{text}” a thousand-something or a decimal? Write it without the comma, or "
    "with a point.",
    "unknown unit": "“{text}” is no unit known here. {example}",
    "wrong kind": "“{unit}” measures {kind}; here {wanted} is wanted. {example}",
    "sure unreadable": "“{text}” is no plus-or-minus. Write 0.2 or 3 %.",
    "below": "Too small: the arithmetic holds from {low} to {high}.",
    "above": "Too large: the arithmetic holds from {low} to {high}.",
    "too many": "At most {high} readings.",
    "no such option": "“{text}” is none of: {options}.",
    "no value": "Write it as input=value.",
    "no such input": "There is no such input.",
    "contradiction": "{label} {says}.",
    "job too large": "The file is larger than {most} bytes. No job is.",
    "job not json": "The file cannot be read: it breaks at line {line}, column {column}.",
    "job too deep": "The file is nested too deeply to be a job.",
    "job no number": "“{text}” stands in the file as a number, but is none.",
    "job member twice": "“{member}” stands twice in one place of the file.",
    "job not an object": "The file is JSON but no job: a job is one object in braces.",
    "job foreign": "This is no job of this handbook: its format is not “{wanted}”.",
    "job newer": "The file has version {version}; this handbook reads version {newest}. Update "
    "the handbook.",
    "job older": "The file has version {version}, which no handbook wrote.",
    "job member missing": "“{member}” is missing from the file.",
    "job member unknown": "“{member}” does not belong in a job file.",
    "job member type": "“{member}” must be {wanted}.",
    "job text long": "“{member}” is longer than {most} characters.",
    "job text unshowable": "“{member}” holds characters that cannot be shown.",
    "job date": "“{text}” is no day of the calendar. Write it as 2026-11-25.",
    "job mark": "{member} is no step of a visit: write the visit, a point and the step.",
    "job time": "{member}: “{text}” is no moment in UTC. Write it as 2026-11-25T10:04:00Z.",
    "job origin": "{member}: “{text}” is neither measured, assumed nor a calculator here.",
    "job no unit": "“{member}” is empty: a bare number would mean different things to different "
    "readers.",
    "job value unknown": "This handbook keeps no value “{text}”. The file may come from another "
    "edition.",
}
