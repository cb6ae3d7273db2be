#pragma once

// Sittings made from a test's own recipe by a hand that is never quite exact, with faults planted in them.
#include "played_support.hpp"

#include "engine/attribution/explanation.hpp"
#include "engine/scoring/by_the_book.hpp"
#include "engine/scoring/ladder.hpp"
#include "engine/scoring/moments.hpp"
#include "engine/sitting/setup.hpp"
#include "sim/optics/random.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace matula::test {

/// Even in 0..1, the same on every machine.
class Draw {
public:
  explicit Draw(std::uint64_t seed) : seed_(optics::hash(seed)) {}
  double even() {
    return static_cast<double>(optics::hash(seed_ ^ optics::hash(++drawn_)) >> 11) * 0x1.0p-53;
  }
  double between(double low, double high) { return low + even() * (high - low); }
  std::size_t of(std::size_t count) {
    return std::min(static_cast<std::size_t>(even() * double(count)), count - 1);
  }

private:
  std::uint64_t seed_;
  std::uint64_t drawn_ = 0;
};

/// One fault of a hand, and the deviation it should be found as.
struct Plant {
  enum class Kind {
    None,
    Volume,
    LeaveOut,
    Heat,
    NoMix,
    ExtraMix,
    Early,
    NotGently,
    Water
  } kind = Kind::None;
  std::size_t step = 0; ///< Of the recipe.
  double factor = 1;
  std::string expected; ///< Key of the deviation.
};

/// A scenario in which one test is asked of a plain urine with so much of what its ladder is made of.
inline scenario::Scenario one_test(const std::string& test, double mg_per_dl, std::uint64_t seed) {
  static const auto base = load_case("first_case");
  static const auto plain = scoring::load_plain_urine(assets::folder());
  scenario::Scenario scenario = base;
  const auto& recipe = standards().recipes.at(test);
  const auto setup = scoring::ladder_setup(world(), *plain, recipe, mg_per_dl);
  scenario.specimen = setup.specimen;
  scenario.reagents_out = setup.reagents_out;
  scenario.reagents_out.push_back("water");
  scenario.collection.reset();
  scenario.asked = {};
  scenario.asked.procedures = {test};
  scenario.decisions.clear();
  scenario.seed = seed;
  return scenario;
}

/// Writes a log by a recipe.
class Hand {
public:
  Hand(const scenario::Scenario& scenario, std::uint64_t seed, std::vector<Plant> plants)
      : setup_(sitting::make_setup(world(), scenario)), state_(bench::begin(setup_)), seed_(seed),
        draw_(seed), plants_(std::move(plants)) {}

  std::vector<sitting::Event> write(const std::string& test) {
    const auto& recipe = standards().recipes.at(test);
    act(bench::Protect{true, true});
    act(bench::Mix{"specimen", bench::Manner::Swirl, 5});
    for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
      step(recipe, i);
    }
    const auto* rule = standards().rules.find_test(test);
    record(rule->item(), rule->words.front());
    log_.push_back({state_.time_s, sitting::Finish{}});
    return log_;
  }

  /// Whether the bench refused anything: then the sitting is no trial.
  [[nodiscard]] bool refused() const { return refused_; }

private:
  const Plant* planted(std::size_t step, Plant::Kind kind) const {
    const auto found = std::find_if(plants_.begin(), plants_.end(),
                                    [&](const Plant& p) { return p.step == step && p.kind == kind; });
    return found == plants_.end() ? nullptr : &*found;
  }
  void act(const bench::Action& action) {
    log_.push_back({state_.time_s, action});
    refused_ = !bench::perform(state_, setup_, action).done || refused_;
  }
  void record(const std::string& item, const std::string& value) {
    log_.push_back({state_.time_s, sitting::Record{item, value}});
  }
  /// A hand is never quite exact, nor as slow as another.
  double about(double value) { return value * draw_.between(0.93, 1.07); }
  double volume(const procedure::RecipeStep& step, std::size_t i) {
    const auto* fault = planted(i, Plant::Kind::Volume);
    const double exact = about(step.volume_ml) * (fault != nullptr ? fault->factor : 1);
    return std::round(exact * 200) / 200;
  }

  void step(const procedure::Recipe& recipe, std::size_t i) {
    using procedure::StepKind;
    const auto& step = recipe.steps[i];
    draw_ = Draw(seed_ * 1000 + i); // So that a fault here changes nothing there.
    if (planted(i, Plant::Kind::LeaveOut) != nullptr || planted(i, Plant::Kind::NoMix) != nullptr) {
      return;
    }
    const bool gently = step.gently && planted(i, Plant::Kind::NotGently) == nullptr;
    pause();
    switch (step.kind) {
    case StepKind::Pour:
      act(bench::Pour{step.from, step.to, volume(step, i), gently});
      break;
    case StepKind::Dispense:
      act(bench::Dispense{step.reagent, step.to, volume(step, i), gently});
      break;
    case StepKind::Mix:
      act(bench::Mix{step.to, step.manner, std::round(about(step.seconds))});
      break;
    case StepKind::Wait:
      wait(i, step.seconds);
      break;
    case StepKind::Heat:
    case StepKind::Boil:
      heat(step, i);
      break;
    case StepKind::Bath:
      bath(step, i);
      break;
    case StepKind::Act:
      for (const auto& action : step.acts) {
        act(action);
      }
      break;
    }
    if (planted(i, Plant::Kind::Water) != nullptr) {
      act(bench::Dispense{"water", recipe.vessel, planted(i, Plant::Kind::Water)->factor, false});
    }
    if (planted(i, Plant::Kind::ExtraMix) != nullptr) {
      act(bench::Mix{recipe.vessel, bench::Manner::Invert, 5});
    }
  }
  void pause() { bench::advance(state_, setup_, std::round(draw_.between(1, 4) * 4) / 4); }
  void wait(std::size_t i, double seconds) {
    const auto* fault = planted(i, Plant::Kind::Early);
    bench::advance(state_, setup_, std::round(fault != nullptr ? seconds * fault->factor : about(seconds)));
  }
  void heat(const procedure::RecipeStep& step, std::size_t i) {
    const auto* fault = planted(i, Plant::Kind::Heat);
    act(bench::LightFlame{true});
    act(bench::Move{step.to, bench::Place::Flame, step.height, false, true});
    const double factor = (fault != nullptr ? fault->factor : 1) * draw_.between(0.95, 1.1);
    if (step.kind == procedure::StepKind::Heat) {
      bench::advance(state_, setup_, std::round(step.seconds * factor));
    } else { // By what is seen: until it has boiled for so long.
      const double until = state_.vessels.at(step.to).trace.boiling_seconds + step.seconds * factor;
      for (double s = 0; s < step.limit_s && state_.vessels.at(step.to).trace.boiling_seconds < until;
           s += 1) {
        bench::advance(state_, setup_, 1);
      }
    }
    act(bench::Move{step.to, bench::Place::Rack, 0.85, false, true});
    act(bench::LightFlame{false});
  }
  void bath(const procedure::RecipeStep& step, std::size_t i) {
    const auto* fault = planted(i, Plant::Kind::Heat);
    act(bench::SetBath{step.temperature_c});
    while (std::abs(state_.bath_c - step.temperature_c) > 0.5) {
      bench::advance(state_, setup_, 5);
    }
    act(bench::Move{step.to, bench::Place::Bath, 0.85, false, true});
    bench::advance(state_, setup_, std::round(about(step.seconds) * (fault != nullptr ? fault->factor : 1)));
    act(bench::Move{step.to, bench::Place::Rack, 0.85, false, true});
  }

  bench::Setup setup_;
  bench::State state_;
  std::uint64_t seed_;
  Draw draw_;
  std::vector<Plant> plants_;
  std::vector<sitting::Event> log_;
  bool refused_ = false;
};

/// Every fault that can be planted in a recipe.
inline std::vector<Plant> plants_for(const std::string& test, Draw& draw) {
  using procedure::StepKind;
  const auto& rule = *standards().rules.find_test(test);
  const auto& recipe = standards().recipes.at(test);
  std::vector<Plant> all;
  std::size_t heats = 0;
  std::size_t mixes = 0;
  const auto known = [&](const std::string& bottle) {
    const bool own = std::find(rule.reagents.begin(), rule.reagents.end(), bottle) != rule.reagents.end();
    return own ? std::string("reagent") : bottle;
  };
  const auto far = [&draw] { return draw.even() < 0.5 ? draw.between(0.15, 0.5) : draw.between(2, 3); };
  for (std::size_t i = 0; i < recipe.steps.size(); ++i) {
    const auto& step = recipe.steps[i];
    const auto add = [&](Plant::Kind kind, double factor, const std::string& key) {
      all.push_back({kind, i, factor, key});
    };
    switch (step.kind) {
    case StepKind::Pour:
      add(Plant::Kind::Volume, far(), "volume.specimen");
      add(Plant::Kind::Water, step.volume_ml * draw.between(0.6, 1.5), "extra.water");
      break;
    case StepKind::Dispense:
      add(Plant::Kind::Volume, far(), "volume." + known(step.reagent));
      if (known(step.reagent) != "reagent" || rule.scale.kind == reading::ScaleKind::HeatCloud) {
        add(Plant::Kind::LeaveOut, 0, "missing." + known(step.reagent));
      }
      if (step.gently) {
        add(Plant::Kind::NotGently, 0, "gently." + known(step.reagent));
        add(Plant::Kind::ExtraMix, 0, "mix.extra");
      }
      break;
    case StepKind::Mix:
      add(Plant::Kind::NoMix, 0, "mix." + std::to_string(++mixes));
      break;
    case StepKind::Heat:
    case StepKind::Boil:
    case StepKind::Bath:
      add(Plant::Kind::Heat, draw.between(0.02, 0.35), "heat." + std::to_string(++heats));
      break;
    case StepKind::Wait:
      if (step.seconds >= 100) {
        add(Plant::Kind::Early, draw.between(0.02, 0.25), "time");
      }
      break;
    case StepKind::Act:
      break;
    }
  }
  return all;
}

/// What the tube showed when the word was written, in grades.
inline double reading_of(const scenario::Scenario& scenario, const std::vector<sitting::Event>& log,
                         const std::string& test) {
  sitting::Session session(world(), scenario);
  for (const auto& event : log) {
    session.take(event);
  }
  const auto& rule = *standards().rules.find_test(test);
  return scoring::read_vessel(session.state(), session.setup(), world().thresholds, rule.scale,
                              standards().recipes.at(test).vessel)
      .intensity;
}

inline std::vector<attribution::Explanation> explained(const scenario::Scenario& scenario,
                                                       const std::vector<sitting::Event>& log) {
  const auto report = scoring::score(world(), standards(), scenario, log);
  return attribution::explain(world(), standards(), scenario, log, report);
}

} // namespace matula::test
