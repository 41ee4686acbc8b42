"""What a browser runs: Pyodide, the trimmed standard library, and `calc`."""
