#include "engine/scoring/by_the_book.hpp"

#include <cmath>

namespace matula::scoring {
namespace {

/// Does actions until one is refused.
class Worker {
public:
  Worker(bench::State& state, const bench::Setup& setup) : state_(state), setup_(setup) {}

  [[nodiscard]] const std::string& stopped_because() const { return stopped_because_; }

  void act(const bench::Action& action) {
    if (!stopped_because_.empty()) {
      return;
    }
    const auto outcome = bench::perform(state_, setup_, action);
    if (!outcome.done) {
      stopped_because_ = outcome.refused_because.empty() ? "refused" : outcome.refused_because;
    }
  }

  void step(const RecipeStep& step) {
    switch (step.kind) {
    case StepKind::Pour:
      act(bench::Pour{step.from, step.to, step.volume_ml, step.gently});
      return;
    case StepKind::Dispense:
      act(bench::Dispense{step.reagent, step.to, step.volume_ml, step.gently});
      return;
    case StepKind::Mix:
      act(bench::Mix{step.to, step.manner, step.seconds});
      return;
    case StepKind::Wait:
      act(bench::Wait{step.seconds});
      return;
    case StepKind::Heat:
      into_flame(step);
      act(bench::Wait{step.seconds});
      out_of_flame(step);
      return;
    case StepKind::Boil:
      into_flame(step);
      watch_boil(step);
      out_of_flame(step);
      return;
    case StepKind::Bath:
      into_bath(step);
      return;
    case StepKind::Act:
      for (const auto& action : step.acts) {
        act(action);
      }
      return;
    }
  }

private:
  void into_flame(const RecipeStep& step) {
    act(bench::LightFlame{true});
    act(bench::Move{step.to, bench::Place::Flame, step.height, false, true});
  }

  void out_of_flame(const RecipeStep& step) {
    act(bench::Move{step.to, bench::Place::Rack, 0.85, false, true});
    act(bench::LightFlame{false});
  }

  /// The bath is brought to its temperature first, as at a bench where it stands ready.
  void into_bath(const RecipeStep& step) {
    constexpr double ready_k = 0.5;
    constexpr double longest_s = 3600;
    act(bench::SetBath{step.temperature_c});
    for (double waited = 0; waited < longest_s && std::abs(state_.bath_c - step.temperature_c) > ready_k;
         waited += 5) {
      act(bench::Wait{5});
    }
    act(bench::Move{step.to, bench::Place::Bath, 0.85, false, true});
    act(bench::Wait{step.seconds});
    act(bench::Move{step.to, bench::Place::Rack, 0.85, false, true});
  }

  [[nodiscard]] double boiled_s(const RecipeStep& step) const {
    const auto vessel = state_.vessels.find(step.to);
    return vessel == state_.vessels.end() ? 0 : vessel->second.trace.boiling_seconds;
  }

  void watch_boil(const RecipeStep& step) {
    const double until = boiled_s(step) + step.seconds;
    for (double spent = 0; spent < step.limit_s && boiled_s(step) < until && stopped_because_.empty();
         spent += 1) {
      act(bench::Wait{1});
    }
  }

  bench::State& state_;
  const bench::Setup& setup_;
  std::string stopped_because_;
};

} // namespace

std::string do_step(bench::State& state, const bench::Setup& setup, const RecipeStep& step) {
  Worker worker(state, setup);
  worker.step(step);
  return worker.stopped_because();
}

BookTube do_by_the_book(const bench::Setup& setup, const Recipe& recipe) {
  return do_by_the_book(setup, bench::begin(setup), recipe);
}

BookTube do_by_the_book(const bench::Setup& setup, const bench::State& fresh, const Recipe& recipe,
                        const GiveUp& give_up) {
  BookTube tube{fresh, recipe.vessel, ""};
  Worker worker(tube.state, setup);
  worker.act(bench::Protect{true, true});
  worker.act(bench::Mix{"specimen", bench::Manner::Swirl, 5});
  for (const auto& step : recipe.steps) {
    if (give_up && give_up()) {
      tube.stopped_because = "given up";
      return tube;
    }
    worker.step(step);
  }
  tube.stopped_because = worker.stopped_because();
  return tube;
}

} // namespace matula::scoring
