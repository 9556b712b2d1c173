"""Three batches at once on one phone: a slab cools while chocolate is tempered and clusters are laid, off line."""

import re

from e2e.phone import Phone
from e2e.server import Server
from e2e.test_chocolate_story import has_the_bowl_in_temper, passes_through
from e2e.walk_cluster import plans_clusters


def pours_a_slab(phone: Phone) -> None:
    phone.plans_and_starts()
    phone.sets_up()
    phone.melts()
    phone.taps("Poured")
    phone.is_at("cool")


def test_a_slab_cools_while_clusters_are_laid_and_chocolate_is_tempered(phone: Phone, server: Server):
    phone.loses_the_network()
    pours_a_slab(phone)
    phone.leaves_the_bench()
    has_the_bowl_in_temper(phone)
    phone.leaves_the_bench()
    passes_through(plans_clusters(phone))
    phone.page.wait_for_url(re.compile("/bench/"))
    phone.page.screenshot(path="/tmp/rooms/wash1.png")
    phone.is_at("wash")
