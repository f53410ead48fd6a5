"""Long work: begun, watched, cancelled, and its result saved."""

from __future__ import annotations

from django.http import FileResponse, Http404, HttpRequest, HttpResponse
from django.http.response import HttpResponseBase
from django.shortcuts import get_object_or_404, redirect, render
from django.views.decorators.http import require_http_methods, require_POST, require_safe

from frogless.errors import InputError
from frogless.studio import refs
from frogless.studio.jobs.bundle import Order, Wearer, bundle
from frogless.studio.jobs.run import Job, jobs
from frogless.studio.library.models import Garment

MOST_BODIES = 60


@require_safe
def jobs_list(request: HttpRequest) -> HttpResponse:
    """What is under way and what was done since the studio was started."""
    return render(request, "jobs/jobs_list.html", {"jobs": jobs().all()})


@require_safe
def show_job(request: HttpRequest, key: str) -> HttpResponse:
    """How far it is; for htmx only that."""
    live = bool(getattr(request, "htmx", False))
    template = "jobs/_job.html" if live else "jobs/job.html"
    return render(request, template, {"job": _job(key)})


@require_POST
def cancel_job(request: HttpRequest, key: str) -> HttpResponse:
    """Ends it."""
    jobs().cancel(_job(key))
    return redirect("jobs:show", key)


@require_safe
def save_result(request: HttpRequest, key: str) -> HttpResponseBase:
    """What came of it, as a file."""
    job = _job(key)
    if job.state != "done" or not job.out.exists():
        raise Http404
    return FileResponse(job.out.open("rb"), as_attachment=True, filename=job.name)


@require_http_methods(["GET", "HEAD", "POST"])
def bundle_pdfs(request: HttpRequest, pk: int) -> HttpResponse:
    """For whom the pattern is to be made; then it is begun."""
    garment = get_object_or_404(Garment, pk=pk, removed=False)
    chosen = request.POST.getlist("body") if request.method == "POST" else [garment.body]
    context = {"garment": garment, "choices": refs.choices("body"), "chosen": chosen}
    if request.method != "POST":
        return render(request, "jobs/bundle.html", context)
    try:
        order = _order(garment, chosen)
        job = jobs().begin(
            f"{order.title} for {len(order.wearers)} bodies",
            "patterns.zip",
            len(order.wearers),
            bundle,
            order,
        )
    except InputError as error:
        return render(request, "jobs/bundle.html", {**context, "alerts": [str(error)]}, status=422)
    return redirect("jobs:show", job.key)


def _order(garment: Garment, chosen: list[str]) -> Order:
    if not 0 < len(chosen) <= MOST_BODIES:
        raise InputError(f"choose 1 to {MOST_BODIES} bodies; {len(chosen)} are chosen")
    bodies = [refs.resolve("body", ref) for ref in dict.fromkeys(chosen)]
    design = refs.resolve("design", garment.design)
    return Order(
        title=design.name,
        design=design.text,
        swatches=tuple(refs.resolve("swatch", ref).text for ref in garment.swatches),
        wearers=tuple(Wearer(body.name, body.text) for body in bodies),
        terms="uk" if garment.terms == "uk" else "us",
        units="in" if garment.units == "in" else "cm",
        hand="left" if garment.hand == "left" else "right",
    )


def _job(key: str) -> Job:
    job = jobs().find(key)
    if job is None:
        raise Http404
    return job
