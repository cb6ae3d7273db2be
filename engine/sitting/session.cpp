#include "engine/sitting/session.hpp"

#include "engine/sitting/setup.hpp"
#include "sim/bench/bench.hpp"

#include <algorithm>

namespace matula::sitting {

struct Session::Impl {
  bench::Setup setup;
  bench::State state;
  std::map<std::string, std::string> worksheet;
  bool finished = false;
};

Session::Session(const assets::World& world, const scenario::Scenario& scenario)
    : impl_(std::make_unique<Impl>()) {
  impl_->setup = make_setup(world, scenario);
  impl_->state = bench::begin(impl_->setup);
}

Session::~Session() = default;
Session::Session(Session&&) noexcept = default;
Session& Session::operator=(Session&&) noexcept = default;

void Session::run_to(double time_s) {
  if (time_s > impl_->state.time_s) {
    bench::advance(impl_->state, impl_->setup, time_s - impl_->state.time_s);
    impl_->state.time_s =
        time_s; // The sum of steps may miss the wanted time by rounding; the log's time rules.
  }
}

bench::Outcome Session::take(const Event& event) {
  bench::Outcome outcome;
  if (impl_->finished) {
    outcome.done = false;
    outcome.refused_because = "The worksheet has been handed in.";
    return outcome;
  }
  run_to(event.time_s);
  if (const auto* action = std::get_if<bench::Action>(&event.what)) {
    return bench::perform(impl_->state, impl_->setup, *action);
  }
  if (const auto* record = std::get_if<Record>(&event.what)) {
    impl_->worksheet[record->item] = record->value;
  } else {
    impl_->finished = true;
  }
  return outcome;
}

double Session::time_s() const {
  return impl_->state.time_s;
}
bool Session::finished() const {
  return impl_->finished;
}

bench::Scene Session::scene(const appearance::View& view) const {
  return bench::make_scene(impl_->state, impl_->setup, view);
}

appearance::Appearance Session::look(const bench::VesselName& vessel, const appearance::View& view) const {
  return bench::look(impl_->state, impl_->setup, vessel, view);
}

const std::map<std::string, std::string>& Session::worksheet() const {
  return impl_->worksheet;
}
const bench::State& Session::state() const {
  return impl_->state;
}
const bench::Setup& Session::setup() const {
  return impl_->setup;
}

} // namespace matula::sitting
