#include "engine/scoring/by_the_book.hpp"

namespace matula::scoring {
namespace {

/// Does actions until one is refused.
class Worker {
public:
  Worker(BookTube& tube, const bench::Setup& setup) : tube_(tube), setup_(setup) {}

  void act(const bench::Action& action) {
    if (!tube_.stopped_because.empty()) {
      return;
    }
    const auto outcome = bench::perform(tube_.state, setup_, action);
    if (!outcome.done) {
      tube_.stopped_because = outcome.refused_because.empty() ? "refused" : outcome.refused_because;
    }
  }

  void step(const RecipeStep& step) {
    switch (step.kind) {
    case StepKind::Pour:
      act(bench::Pour{"specimen", tube_.vessel, step.volume_ml, false});
      return;
    case StepKind::Dispense:
      act(bench::Dispense{step.reagent, tube_.vessel, step.volume_ml, false});
      return;
    case StepKind::Mix:
      act(bench::Mix{tube_.vessel, step.manner, step.seconds});
      return;
    case StepKind::Wait:
      act(bench::Wait{step.seconds});
      return;
    case StepKind::Heat:
      into_flame(step.height);
      act(bench::Wait{step.seconds});
      out_of_flame();
      return;
    case StepKind::Boil:
      into_flame(step.height);
      watch_boil(step);
      out_of_flame();
      return;
    }
  }

private:
  void into_flame(double height) {
    act(bench::LightFlame{true});
    act(bench::Move{tube_.vessel, bench::Place::Flame, height, false, true});
  }

  void out_of_flame() {
    act(bench::Move{tube_.vessel, bench::Place::Rack, 0.85, false, true});
    act(bench::LightFlame{false});
  }

  [[nodiscard]] double boiled_s() const {
    const auto vessel = tube_.state.vessels.find(tube_.vessel);
    return vessel == tube_.state.vessels.end() ? 0 : vessel->second.trace.boiling_seconds;
  }

  void watch_boil(const RecipeStep& step) {
    const double until = boiled_s() + step.seconds;
    for (double spent = 0; spent < step.limit_s && boiled_s() < until && tube_.stopped_because.empty();
         spent += 1) {
      act(bench::Wait{1});
    }
  }

  BookTube& tube_;
  const bench::Setup& setup_;
};

} // namespace

BookTube do_by_the_book(const bench::Setup& setup, const Recipe& recipe) {
  BookTube tube{bench::begin(setup), recipe.vessel, ""};
  Worker worker(tube, setup);
  worker.act(bench::Protect{true, true});
  worker.act(bench::Mix{"specimen", bench::Manner::Swirl, 5});
  for (const auto& step : recipe.steps) {
    worker.step(step);
  }
  return tube;
}

} // namespace matula::scoring
