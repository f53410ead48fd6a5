"""The studio's server: this computer only, until it is stopped."""

from __future__ import annotations

import logging
import os
import sys
import threading
import webbrowser
from contextlib import suppress

from django.core.handlers.wsgi import WSGIHandler
from django.core.management import call_command
from django.core.wsgi import get_wsgi_application
from django.db import Error, connection
from django.urls import get_resolver
from waitress.server import BaseWSGIServer, MultiSocketServer, create_server

from frogless.errors import InputError
from frogless.studio.places import made, private

HOST = "127.0.0.1"
THREADS = 12
MOST_PORT = 65535


def run(port: int, *, browser: bool) -> str:
    """Starts the studio and stays until Ctrl-C. Returns what there is to say at the end.

    Raises:
        InputError: the port is taken, or there is no place for the library.
    """
    application = prepared()
    from frogless.studio import forgetting
    from frogless.studio.jobs.run import jobs
    from frogless.studio.work import pool

    server = _listening(application, port)
    pool.open_pool(os.cpu_count() or 1)
    forgetting.connect()
    address = f"http://{HOST}:{server.effective_port}"  # type: ignore[union-attr] # the stubs lack it
    print(f"Frogless studio: {address}{_link()}\nCtrl-C stops it.", flush=True)
    if browser:
        # A browser that runs in the terminal would keep the server from starting.
        threading.Thread(target=webbrowser.open, args=(address + _link(),), daemon=True).start()
    if sys.stdin is not None and sys.stdin.isatty():
        threading.Thread(target=_links_on_enter, args=(address,), daemon=True).start()
    try:
        server.run()
    except KeyboardInterrupt:
        pass
    finally:
        jobs().end()
        pool.pool().end()
        server.close()
    return "\nFrogless studio: stopped.\n"


def prepared() -> WSGIHandler:
    """The application, its library made or brought up to date.

    Raises:
        InputError: there is no place for the library, or the file there is none.
    """
    os.environ["DJANGO_SETTINGS_MODULE"] = "frogless.studio.settings"
    application = get_wsgi_application()
    # Everything is imported now, so that the first page is as quick as the others.
    get_resolver().url_patterns  # noqa: B018
    from frogless.studio.settings import DATA, LIBRARY

    private(made(DATA) / LIBRARY)
    try:
        call_command("migrate", verbosity=0, interactive=False)
    except Error as error:
        raise InputError(
            f"{DATA}: the library there cannot be used ({error}); move it away, or name another "
            "folder in FROGLESS_DATA"
        ) from None
    finally:
        connection.close()
    return application


def _link() -> str:
    from frogless.studio import entrance

    return entrance.link()


def _links_on_enter(address: str) -> None:
    """A new link each time somebody presses Enter in the terminal."""
    with suppress(OSError, ValueError):
        for _ in sys.stdin:
            print(f"{address}{_link()}", flush=True)


def _listening(application: WSGIHandler, port: int) -> BaseWSGIServer | MultiSocketServer:
    from frogless.studio.settings import LARGEST_LIBRARY

    logging.getLogger("waitress").setLevel(logging.ERROR)
    if not 0 <= port <= MOST_PORT:
        raise InputError(f"port {port} cannot be had (a port is a number from 0 to {MOST_PORT})")
    try:
        return create_server(
            application,
            host=HOST,
            port=port,
            threads=THREADS,
            ident=None,
            # The studio answers with a page of its own what is larger than it takes.
            max_request_body_size=4 * LARGEST_LIBRARY,
            # Half a request that somebody sent keeps nobody else waiting.
            channel_timeout=15,
            cleanup_interval=5,
            connection_limit=1000,
        )
    except OSError as error:
        reason = error.strerror or "unknown reason"
        raise InputError(
            f"port {port} cannot be had ({reason.lower()}); choose another, or leave --port out"
        ) from None
