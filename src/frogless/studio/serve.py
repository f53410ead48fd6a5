"""The studio's server: this computer only, a thread for each request, until it is stopped."""

from __future__ import annotations

import os
import socket
import sys
import threading
import webbrowser
from contextlib import suppress
from socketserver import TCPServer, ThreadingMixIn
from wsgiref.simple_server import WSGIRequestHandler, WSGIServer

from django.core.handlers.wsgi import WSGIHandler
from django.core.management import call_command
from django.core.wsgi import get_wsgi_application
from django.db import Error, connection
from django.urls import get_resolver

from frogless.errors import InputError
from frogless.studio.places import made, private

HOST = "127.0.0.1"
DRAINED = 32_000_000
"""Bytes of a refused upload that are read away, so that the browser gets to see why."""


class Handler(WSGIRequestHandler):
    """Says nothing of requests that went well, and waits for no browser for ever."""

    timeout = 30

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002 - named so above
        """Nothing."""


class Server(ThreadingMixIn, WSGIServer):
    """Listens on loopback."""

    daemon_threads = True
    block_on_close = False
    # On Windows the option would let two programs share one port.
    allow_reuse_address = sys.platform != "win32"

    def server_bind(self) -> None:
        """As the class above, but no name server is asked what this computer is called."""
        TCPServer.server_bind(self)
        self.server_name, self.server_port = HOST, self.server_address[1]
        self.setup_environ()

    def shutdown_request(self, request: socket.socket | tuple[bytes, socket.socket]) -> None:
        """Closes a connection once the browser has sent what it had to send."""
        if isinstance(request, socket.socket):
            _drain(request)
        super().shutdown_request(request)


def run(port: int, *, browser: bool) -> str:
    """Starts the studio and stays until Ctrl-C. Returns what there is to say at the end.

    Raises:
        InputError: the port is taken, or there is no place for the library.
    """
    application = prepared()
    with _listening(port) as server:
        server.set_app(application)
        address = f"http://{HOST}:{server.server_port}/"
        print(f"Frogless studio: {address}\nCtrl-C stops it.", flush=True)
        if browser:
            # A browser that runs in the terminal would keep the server from starting.
            threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            return "\nFrogless studio: stopped.\n"
    return ""


def prepared() -> WSGIHandler:
    """The application, its library made or brought up to date; what was deleted is gone for good.

    Raises:
        InputError: there is no place for the library, or the file there is none.
    """
    os.environ["DJANGO_SETTINGS_MODULE"] = "frogless.studio.settings"
    application = get_wsgi_application()
    # Everything is imported now, so that the first page is as quick as the others.
    get_resolver().url_patterns  # noqa: B018
    from frogless.studio.library import shelf
    from frogless.studio.settings import DATA, LIBRARY

    private(made(DATA) / LIBRARY)
    try:
        call_command("migrate", verbosity=0, interactive=False)
        shelf.empty_bin()
    except Error as error:
        raise InputError(
            f"{DATA}: the library there cannot be used ({error}); move it away, or name another "
            "folder in FROGLESS_DATA"
        ) from None
    finally:
        connection.close()
    return application


def _listening(port: int) -> Server:
    try:
        return Server((HOST, port), Handler)
    except (OSError, OverflowError) as error:
        reason = getattr(error, "strerror", None) or "a port is a number from 0 to 65535"
        raise InputError(
            f"port {port} cannot be had ({reason.lower()}); choose another, or leave --port out"
        ) from None


def _drain(request: socket.socket) -> None:
    # Closing with unread data resets the connection, and the browser would show that instead.
    left = DRAINED
    with suppress(OSError):
        request.shutdown(socket.SHUT_WR)
        request.settimeout(2)
        while left > 0 and (got := request.recv(65536)):
            left -= len(got)
