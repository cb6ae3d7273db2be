#include "sim/bench/keeping.hpp"

#include "sim/ageing/live.hpp"
#include "sim/column/portions.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

namespace matula::bench {

namespace {

constexpr double s_per_h = 3600;
constexpr double longest_turn_h = 0.5; // Splitting of life and settling; halving it moves no result by 1 %.
constexpr double shortest_turn_h = 1.0 / 12;
constexpr double quick_change_k = 1; // Between cup and surroundings: then the turns are short.
constexpr double bench_lux = 1000;

const ageing::Laws& laws_of(const Setup& setup) {
  static const ageing::Laws none;
  return setup.ageing != nullptr ? *setup.ageing : none;
}

ageing::Keeping keeping_of(const specimen::Leg& leg, const column::Column& cup) {
  ageing::Keeping keeping;
  keeping.open = leg.open;
  keeping.lux = leg.lux;
  keeping.depth_mm = std::max(1.0, cup.shape.level_mm(cup.volume_ml()));
  return keeping;
}

/// Gives every part of the column what the whole has become: what is dissolved everywhere alike, what is
/// suspended where it was.
void spread(column::Column& cup, const matter::Mixture& before, const matter::Mixture& after) {
  const auto give = [&](matter::Mixture& part) {
    if (part.volume_ml <= 0) {
      return;
    }
    for (std::size_t s = 0; s < part.mmol.size(); ++s) {
      part.mmol[s] = after.mmol[s] * (part.volume_ml / after.volume_ml);
    }
    for (auto& [kind, population] : part.populations.present()) {
      const double was_g = before.populations[kind].total_g();
      const double here_g = population.total_g();
      if (was_g <= 0 || before.populations[kind].grams == after.populations[kind].grams) {
        continue;
      }
      for (std::size_t b = 0; b < matter::size_bins; ++b) {
        population.grams[b] = after.populations[kind].grams[b] * (here_g / was_g);
      }
    }
  };
  give(cup.sediment);
  for (matter::Mixture& layer : cup.layers) {
    give(layer);
  }
}

/// The cup stays as it is while life goes on in it as in one pot.
void live_together(column::Column& cup, ageing::Gas& gas, const Setup& setup, const ageing::Keeping& keeping,
                   double hours) {
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  const matter::Mixture before = column::whole(cup, catalogue);
  matter::Mixture after = before;
  ageing::live(after, catalogue, *setup.chemistry, laws_of(setup), keeping, hours, gas);
  spread(cup, before, after);
}

void live_leg(column::Column& cup, ageing::Gas& gas, const Setup& setup, const column::Chemistry& solids,
              const specimen::Leg& leg) {
  column::Surroundings around;
  around.room_c = leg.temperature_c;
  around.unwatched = true;
  double left_h = leg.hours;
  double owed_h = 0; // Life that the turn before has left for the middle of two turns of the column.
  while (left_h > 0 && !cup.layers.empty()) {
    const double off_k = std::abs(column::mean_temperature_c(cup) - leg.temperature_c);
    const double longest_h = off_k > quick_change_k ? shortest_turn_h : longest_turn_h;
    const double turn_h =
        left_h / std::ceil(left_h / longest_h); // equal turns, so that the last is no sliver
    const ageing::Keeping keeping = keeping_of(leg, cup);
    live_together(cup, gas, setup, keeping, owed_h + 0.5 * turn_h);
    column::advance(cup, solids, around, turn_h * s_per_h);
    owed_h = 0.5 * turn_h;
    left_h = turn_h < left_h ? left_h - turn_h : 0;
  }
  live_together(cup, gas, setup, keeping_of(leg, cup), owed_h);
}

void add_preservative(column::Column& cup, const Setup& setup, const specimen::Preservative& added) {
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  const matter::Reagent* reagent = catalogue.find_reagent(added.reagent);
  if (reagent == nullptr) {
    throw std::invalid_argument("a specimen needs the bottle '" + added.reagent + "'");
  }
  constexpr double per_100 = 0.01;
  matter::Mixture dose = matter::empty_mixture(catalogue);
  dose.volume_ml = added.ml_per_100_ml * per_100 * cup.volume_ml();
  dose.temperature_c = column::mean_temperature_c(cup);
  for (const auto& [id, mol_per_l] : reagent->mol_per_l) {
    dose.mmol[id] += mol_per_l * dose.volume_ml;
  }
  matter::Mixture all = column::whole(cup, catalogue);
  matter::merge(all, dose); // It is shaken in.
  cup = column::empty_column(cup.shape, catalogue);
  column::pour_in(cup, all, true, catalogue);
}

/// The legs cut where something is added.
struct Stop {
  double at_h = 0;
  const specimen::Preservative* added = nullptr;
};

std::vector<Stop> stops(const specimen::Specimen& specimen) {
  std::vector<Stop> list;
  for (const specimen::Preservative& added : specimen.preservatives) {
    list.push_back({added.at_hours, &added});
  }
  std::stable_sort(list.begin(), list.end(), [](const Stop& a, const Stop& b) { return a.at_h < b.at_h; });
  return list;
}

} // namespace

void keep(column::Column& cup, ageing::Gas& gas, const Setup& setup) {
  const specimen::Specimen& specimen = setup.specimen;
  std::vector<specimen::Leg> legs = specimen.life;
  if (specimen.stood_hours > 0) {
    legs.push_back({specimen.stood_hours, specimen.temperature_c, true, bench_lux});
  }
  column::Chemistry solids = *setup.chemistry;
  solids.reactions.clear();
  reaction::prepare(solids, *solids.catalogue);
  std::vector<Stop> waiting = stops(specimen);
  std::reverse(waiting.begin(), waiting.end());
  double now_h = 0;
  const auto add_due = [&](double until_h) {
    while (!waiting.empty() && waiting.back().at_h <= until_h) {
      add_preservative(cup, setup, *waiting.back().added);
      waiting.pop_back();
    }
  };
  add_due(0);
  for (const specimen::Leg& leg : legs) {
    double left_h = leg.hours;
    while (left_h > 0) {
      specimen::Leg part = leg;
      const bool cut = !waiting.empty() && waiting.back().at_h < now_h + left_h;
      part.hours = cut ? waiting.back().at_h - now_h : left_h;
      live_leg(cup, gas, setup, solids, part);
      now_h += part.hours;
      left_h = cut ? left_h - part.hours : 0;
      add_due(now_h);
    }
  }
  add_due(1e300); // What comes later is added at the bench's door.
}

bool lives(const column::Column& column, const Setup& setup) {
  const ageing::Laws& laws = laws_of(setup);
  const auto holds = [&column](matter::ParticleId kind) {
    const auto there = [kind](const matter::Mixture& part) { return !part.populations[kind].empty(); };
    return there(column.sediment) || std::any_of(column.layers.begin(), column.layers.end(), there);
  };
  constexpr double worth_molar = 1e-5;
  const auto vapour = [&column](const ageing::Volatile& row) {
    const auto there = [&row](const matter::Mixture& part) { return part.molar(row.species) > worth_molar; };
    return row.on_the_bench && std::any_of(column.layers.begin(), column.layers.end(), there);
  };
  return std::any_of(laws.volatiles.begin(), laws.volatiles.end(), vapour) ||
         std::any_of(laws.organisms.begin(), laws.organisms.end(),
                     [&](const ageing::Organism& row) { return holds(row.kind); }) ||
         std::any_of(laws.cells.begin(), laws.cells.end(),
                     [&](const ageing::Cell& row) { return holds(row.kind); });
}

void live_on(column::Column& column, const Setup& setup, double hours) {
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  ageing::Keeping keeping;
  keeping.chemistry = false;
  keeping.depth_mm = std::max(1.0, column.shape.level_mm(column.volume_ml()));
  const auto live_in = [&](matter::Mixture& part) {
    ageing::Gas gas;
    ageing::live(part, catalogue, *setup.chemistry, laws_of(setup), keeping, hours, gas);
  };
  live_in(column.sediment);
  const std::vector<double> still(column.layers.size(), 0.0);
  for (const column::Run& run : column::alike_runs(column.layers, still)) {
    matter::Mixture pooled = column::pool(column.layers, run);
    live_in(pooled);
    column::deal(column.layers, run, pooled);
  }
}

} // namespace matula::bench
