#include "engine/drafting/showing.hpp"

#include "engine/author/preview.hpp"

#include <stdexcept>

namespace matula::drafting {

namespace {

constexpr double swirl_s = 5;

std::shared_ptr<const bench::State> swirled(const author::Preview& preview) {
  auto state = std::make_shared<bench::State>(preview.begun());
  (void)bench::perform(*state, preview.setup(), bench::Mix{"specimen", bench::Manner::Swirl, swirl_s});
  return state;
}

} // namespace

void Showing::want(unsigned version, std::shared_ptr<const scenario::Scenario> scenario,
                   std::optional<scenario::Review> review) {
  thread_.want([this, version, scenario = std::move(scenario),
                review = std::move(review)](const scoring::GiveUp& give_up) {
    try {
      work(version, *scenario, review, give_up);
    } catch (const std::exception& why) {
      Made made;
      made.version = version;
      made.done = true;
      made.trouble = why.what();
      hand_over(made);
    }
  });
}

std::shared_ptr<const Made> Showing::latest() const {
  const std::lock_guard lock(guard_);
  return latest_;
}

int Showing::tests_done() const {
  const std::lock_guard lock(guard_);
  return tests_done_;
}

void Showing::hand_over(const Made& made) {
  auto next = std::make_shared<const Made>(made);
  const std::lock_guard lock(guard_);
  tests_done_ += made.shown.empty() || made.done ? 0 : 1;
  latest_ = std::move(next);
}

void Showing::work(unsigned version, const scenario::Scenario& scenario,
                   const std::optional<scenario::Review>& review, const scoring::GiveUp& give_up) {
  if (give_up()) {
    return;
  }
  author::Preview preview(*shelf_, scenario);
  if (give_up()) {
    return;
  }
  Made made;
  made.version = version;
  made.setup = std::make_shared<const bench::Setup>(preview.setup());
  made.specimen = swirled(preview);
  made.floated = preview.floated();
  made.liquid = preview.liquid();
  made.warnings = preview.warnings();
  made.worth = author::worth_of(*shelf_, scenario, preview);
  hand_over(made);
  while (preview.next(give_up)) {
    made.shown = preview.shown();
    hand_over(made);
  }
  if (give_up()) {
    return;
  }
  made.advice = author::advise(*shelf_, scenario, preview, review);
  made.done = true;
  hand_over(made);
}

} // namespace matula::drafting
