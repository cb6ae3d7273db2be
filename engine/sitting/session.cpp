#include "engine/sitting/session.hpp"

#include "engine/scenario/scenario.hpp"
#include "engine/sitting/aside.hpp"
#include "engine/sitting/items.hpp"
#include "engine/sitting/setup.hpp"
#include "sim/bench/bench.hpp"

#include <cmath>
#include <cstdint>

namespace matula::sitting {

namespace {

constexpr double microseconds_per_s = 1e6;

/// Times are whole microseconds, as the bench keeps them, so that a window drawing sixty times a second and a
/// replay leaping from event to event ask for the same stretch of time in all.
std::int64_t microseconds(double seconds) {
  return std::llround(seconds * microseconds_per_s);
}

bench::Outcome refusal(std::string because) {
  bench::Outcome outcome;
  outcome.done = false;
  outcome.refused_because = std::move(because);
  return outcome;
}

} // namespace

struct Session::Impl {
  scenario::Scenario scenario;
  bench::Setup setup;
  bench::State state;
  Aside aside;
  bool finished = false;
  std::map<std::string, std::string> worksheet;

  void run_to(double time_s) {
    const std::int64_t wanted = microseconds(time_s) - microseconds(state.time_s);
    if (wanted > 0) {
      bench::advance(state, setup, static_cast<double>(wanted) * 1e-6);
    }
  }

  bench::Outcome act(const bench::Action& action) {
    if (const auto* wait = std::get_if<bench::Wait>(&action)) {
      run_to(state.time_s + wait->seconds);
      return {};
    }
    for (const bench::VesselName& vessel : named_in(action)) {
      aside.take_up(state, setup, vessel);
    }
    return bench::perform(state, setup, action);
  }

  bench::Outcome write(const Record& record) {
    if (std::string because = refuse_record(scenario, record); !because.empty()) {
      return refusal(std::move(because));
    }
    worksheet[record.item] = record.value;
    return {};
  }
};

Session::Session(const assets::World& world, const scenario::Scenario& scenario)
    : impl_(std::make_unique<Impl>()) {
  impl_->scenario = scenario;
  impl_->setup = make_setup(world, scenario);
  impl_->state = bench::begin(impl_->setup);
}

Session::Session(const assets::World& world, const scenario::Scenario& scenario, const bench::State& fresh)
    : impl_(std::make_unique<Impl>()) {
  impl_->scenario = scenario;
  impl_->setup = make_setup(world, scenario);
  impl_->state = fresh;
}

Session::~Session() = default;
Session::Session(Session&&) noexcept = default;
Session& Session::operator=(Session&&) noexcept = default;
Session::Session(const Session& other) : impl_(std::make_unique<Impl>(*other.impl_)) {}
Session& Session::operator=(const Session& other) {
  if (this != &other) {
    impl_ = std::make_unique<Impl>(*other.impl_);
  }
  return *this;
}

void Session::run_to(double time_s) {
  if (!impl_->finished) {
    impl_->run_to(time_s);
  }
}

bench::Outcome Session::take(const Event& event) {
  if (impl_->finished) {
    return refusal("The worksheet has been handed in; nothing can be added.");
  }
  impl_->run_to(event.time_s);
  if (const auto* action = std::get_if<bench::Action>(&event.what)) {
    return impl_->act(*action);
  }
  if (const auto* record = std::get_if<Record>(&event.what)) {
    return impl_->write(*record);
  }
  impl_->finished = true;
  return {};
}

double Session::time_s() const {
  // What many short stretches of time add up to differs in its last bits from one long one.
  return static_cast<double>(microseconds(impl_->state.time_s)) / microseconds_per_s;
}

bool Session::finished() const {
  return impl_->finished;
}

bench::Scene Session::scene(const appearance::View& view) const {
  impl_->aside.take_up_all(impl_->state, impl_->setup);
  return bench::make_scene(impl_->state, impl_->setup, view);
}

appearance::Appearance Session::look(const bench::VesselName& vessel, const appearance::View& view) const {
  impl_->aside.take_up(impl_->state, impl_->setup, vessel);
  return bench::look(impl_->state, impl_->setup, vessel, view);
}

void Session::lay_aside(const bench::VesselName& vessel) {
  impl_->aside.lay(impl_->state, impl_->setup, vessel);
}

void Session::take_up(const bench::VesselName& vessel) {
  impl_->aside.take_up(impl_->state, impl_->setup, vessel);
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
