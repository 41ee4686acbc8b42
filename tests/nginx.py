"""nginx on loopback, set up as docs/hosting.md tells its readers."""

import re
import socket
import subprocess
import time
from pathlib import Path
from typing import Self

from build_scripts.environment import NGINX, NGINX_BROTLI, ROOT

# What a distribution's nginx.conf holds around the servers. Nothing outside {home} is written.
AROUND = """
daemon off;
master_process off;
pid {home}/pid;
load_module {module};
events {{}}
http {{
  access_log off;
  client_body_temp_path {home}/body;
  proxy_temp_path {home}/proxy;
  fastcgi_temp_path {home}/fastcgi;
  uwsgi_temp_path {home}/uwsgi;
  scgi_temp_path {home}/scgi;
{recipe}
}}
"""
RECIPES = re.findall(
    r"```nginx\n(.*?)```", (ROOT / "docs/hosting.md").read_text(encoding="utf-8"), re.DOTALL
)
WHERE = {"at the root of the host": "", "in a sub-folder": "handbook/"}  # as the page has them


class Nginx:
    """Serves a folder by one of the recipes, from `with` to its end."""

    def __init__(self, home: Path, folder: Path, recipe: str = RECIPES[0]) -> None:
        self.errors = home / "errors"
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            self.port = free.getsockname()[1]
        assert "listen 80;" in recipe
        ours = recipe.replace("listen 80;", f"listen 127.0.0.1:{self.port};")
        ours = ours.replace("/srv/handbook", str(folder))
        settings = home / "nginx.conf"
        settings.write_text(AROUND.format(home=home, module=NGINX_BROTLI, recipe=ours))
        self.command: list[str | Path] = [NGINX, "-p", home, "-c", settings, "-e", self.errors]

    def __enter__(self) -> Self:
        self.process = subprocess.Popen(self.command)
        self._wait()
        return self

    def __exit__(self, *_: object) -> None:
        self.process.terminate()
        self.process.wait(10)

    @property
    def url(self) -> str:
        return f"http://127.0.0.1:{self.port}/"

    def _wait(self) -> None:
        for _ in range(200):
            with socket.socket() as there:
                if there.connect_ex(("127.0.0.1", self.port)) == 0:
                    return
            time.sleep(0.05)
        self.__exit__()
        raise RuntimeError(self.errors.read_text())
