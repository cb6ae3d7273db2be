#include "bench_fixture.hpp"

#include <catch2/catch.hpp>

#include <chrono>

using namespace matula;
using namespace matula::bench;

namespace {

Setup proteinuric() {
  Setup setup = test::setup();
  setup.specimen.mg_per_dl = {{"albumin", 150}};
  return setup;
}

/// A short piece of work with heat, acid, a float and chance in it.
State work(const Setup& setup, int splits) {
  State state = begin(setup);
  const auto pass = [&](double seconds) {
    for (int i = 0; i < splits; ++i) {
      advance(state, setup, seconds / splits);
    }
  };
  perform(state, setup, Protect{true, true});
  perform(state, setup, Pour{"specimen", "tube-1", 5, false});
  perform(state, setup, LightFlame{true});
  perform(state, setup, Move{"tube-1", Place::Flame, 0.7, false, false});
  pass(20);
  perform(state, setup, Move{"tube-1", Place::Rack});
  perform(state, setup, Pour{"specimen", "tube-2", 2, false});
  perform(state, setup, Dispense{"ssa_3", "tube-2", 2, false});
  perform(state, setup, Mix{"tube-2", Manner::Invert, 5});
  perform(state, setup, Pour{"specimen", "jar", 30, false});
  perform(state, setup, Float{"jar", false, false});
  pass(31);
  return state;
}

} // namespace

TEST_CASE("The same setup, actions and seed give the same bits") {
  const Setup setup = proteinuric();
  CHECK(state_hash(work(setup, 1)) == state_hash(work(setup, 1)));
}

TEST_CASE("Time passed in many frames is the time passed at once") {
  const Setup setup = proteinuric();
  CHECK(state_hash(work(setup, 1)) == state_hash(work(setup, 97)));
}

TEST_CASE("Another seed is another float and another specimen another state") {
  const Setup setup = proteinuric();
  Setup other = setup;
  other.seed = 8;
  CHECK(state_hash(work(setup, 1)) != state_hash(work(other, 1)));
  Setup healthy = setup;
  healthy.specimen.mg_per_dl.clear();
  CHECK(state_hash(work(setup, 1)) != state_hash(work(healthy, 1)));
}

TEST_CASE("A copied state goes its own way to the same end") {
  const Setup setup = proteinuric();
  State one = work(setup, 1);
  State two = one;
  advance(one, setup, 40);
  advance(two, setup, 40);
  CHECK(state_hash(one) == state_hash(two));
}

TEST_CASE("Idle glass costs next to nothing") {
  const Setup setup = test::setup();
  State state = begin(setup);
  const auto from = std::chrono::steady_clock::now();
  advance(state, setup, 3600);
  const std::chrono::duration<double> took = std::chrono::steady_clock::now() - from;
  // An hour of bench time with one specimen standing; generous for a loaded machine and a sanitizer build.
  CHECK(took.count() < 20);
  WARN("an idle hour took " << took.count() << " s");
}
