#include "engine/scoring/tubes.hpp"

#include "engine/scoring/papers.hpp"

#include <algorithm>

namespace matula::scoring {
namespace {

constexpr int longest_detour = 6; // Vessel to vessel; beyond it a share is not worth following.
constexpr double hot_c =
    60; // Albumin begins to clot about here; a tube that never was warmer was not heated.

double poured_ml(const bench::VesselTrace& trace) {
  double sum = 0;
  for (const auto& addition : trace.additions) {
    sum += addition.volume_ml;
  }
  return sum;
}

/// Share of what was put into `vessel` that came from `origin`.
double share_of(const bench::State& state, const std::string& vessel, const std::string& origin, int detour);

double ml_of(const bench::State& state, const bench::VesselTrace& trace, const std::string& origin,
             int detour) {
  double sum = 0;
  for (const auto& addition : trace.additions) {
    // Nothing is poured into itself: then it is a bottle of the vessel's name, as Esbach's reagent in his
    // tube.
    const auto from = state.vessels.find(addition.what);
    if (from != state.vessels.end() && &from->second.trace == &trace) {
      continue;
    }
    sum += addition.volume_ml * share_of(state, addition.what, origin, detour + 1);
  }
  return sum;
}

double share_of(const bench::State& state, const std::string& vessel, const std::string& origin, int detour) {
  if (vessel == origin) {
    return 1;
  }
  const auto found = state.vessels.find(vessel);
  if (found == state.vessels.end() || detour > longest_detour || vessel == "specimen" || vessel == "water") {
    return 0;
  }
  const double all = poured_ml(found->second.trace);
  return all > 0 ? ml_of(state, found->second.trace, origin, detour) / all : 0;
}

double last_touched_s(const bench::VesselTrace& trace) {
  double last = trace.additions.empty() ? 0 : trace.additions.back().time_s;
  return trace.looked_at_s.empty() ? last : std::max(last, trace.looked_at_s.back());
}

bool has_reagent_of(const bench::VesselTrace& trace, const TestRule& test) {
  return reagent_ml(trace, test) > 0;
}

/// Whether the tube holds all that the test goes with and nothing that speaks against it, also by way of
/// another vessel.
bool fits(const bench::State& state, const bench::VesselTrace& trace, const TestRule& test) {
  const auto in = [&](const std::string& what) { return ml_of(state, trace, what, 0) > 0; };
  return std::all_of(test.with.begin(), test.with.end(), in) &&
         std::none_of(test.without.begin(), test.without.end(), in);
}

/// The last filter paper that a tube of the test went through.
bench::VesselName find_filtered(const bench::State& state, const TestRule& test) {
  const auto found = std::find_if(state.papers.rbegin(), state.papers.rend(), [&](const auto& paper) {
    const bench::VesselTrace& from = paper.trace.source;
    return paper.piece.kind == test.scale.paper.paper && urine_ml(state, from) > 0 &&
           has_reagent_of(from, test) && fits(state, from, test);
  });
  return found == state.papers.rend() ? "" : found->piece.name;
}

/// A tube of a test is known by what is in it: a reagent, powder strewn on it, or, for the heat test, warmth
/// alone.
bool is_tube_of(const bench::State& state, const bench::Vessel& vessel, const Rulebook& book,
                const TestRule& test) {
  const bench::VesselTrace& trace = vessel.trace;
  if (test.scale.kind == reading::ScaleKind::Powder) {
    return vessel.sulphur.has_value() && fits(state, trace, test);
  }
  if (test.scale.kind != reading::ScaleKind::HeatCloud) {
    return has_reagent_of(trace, test) && fits(state, trace, test);
  }
  const bool other = std::any_of(book.tests.begin(), book.tests.end(), [&](const TestRule& t) {
    return t.key != test.key && has_reagent_of(trace, t) && fits(state, trace, t);
  });
  return !other && (trace.hottest_c >= hot_c || has_reagent_of(trace, test));
}

} // namespace

double urine_ml(const bench::State& state, const bench::VesselName& vessel) {
  const auto found = state.vessels.find(vessel);
  return found == state.vessels.end() ? 0 : ml_of(state, found->second.trace, "specimen", 0);
}

double urine_ml(const bench::State& state, const bench::VesselTrace& trace) {
  return ml_of(state, trace, "specimen", 0);
}

double water_ml(const bench::State& state, const bench::VesselName& vessel) {
  const auto found = state.vessels.find(vessel);
  return found == state.vessels.end() ? 0 : ml_of(state, found->second.trace, "water", 0);
}

double reagent_ml(const bench::VesselTrace& trace, const TestRule& test) {
  double sum = 0;
  for (const auto& addition : trace.additions) {
    const auto found = std::find(test.reagents.begin(), test.reagents.end(), addition.what);
    if (found != test.reagents.end()) {
      const auto i = static_cast<std::size_t>(found - test.reagents.begin());
      sum += addition.volume_ml * (i < test.strengths.size() ? test.strengths[i] : 1.0);
    }
  }
  return sum;
}

bool mixed_since_last_addition(const bench::VesselTrace& trace) {
  return !trace.additions.empty() && !trace.mixed_at_s.empty() &&
         trace.mixed_at_s.back() > trace.additions.back().time_s;
}

bench::VesselName find_tube(const bench::State& state, const Rulebook& book, const TestRule& test) {
  if (test.scale.on_paper()) {
    return test.scale.kind == reading::ScaleKind::Paper ? find_paper(state, test.scale.paper.paper)
                                                        : find_filtered(state, test);
  }
  bench::VesselName best;
  double latest = -1;
  for (const auto& [name, vessel] : state.vessels) {
    const bool holds_urine = name != "specimen" && urine_ml(state, name) > 0;
    if (!holds_urine || !is_tube_of(state, vessel, book, test) || last_touched_s(vessel.trace) < latest) {
      continue;
    }
    best = name;
    latest = last_touched_s(vessel.trace);
  }
  return best;
}

} // namespace matula::scoring
