#include "engine/scoring/curve_watch.hpp"

#include "engine/scoring/tubes.hpp"

#include <algorithm>
#include <cmath>

namespace matula::scoring {
namespace {

template <typename A> const A* action_of(const sitting::Event& event) {
  const auto* action = std::get_if<bench::Action>(&event.what);
  return action == nullptr ? nullptr : std::get_if<A>(action);
}

double sum_of(const WentIn& parts) {
  double sum = 0;
  for (const auto& [what, ml] : parts) {
    sum += ml;
  }
  return sum;
}

double part_ml(const WentIn& parts, const std::string& what) {
  const auto found = parts.find(what);
  return found == parts.end() ? 0 : found->second;
}

void scale(WentIn& parts, double factor) {
  for (auto& [what, ml] : parts) {
    ml *= factor;
  }
}

bool is_source(const bench::VesselName& vessel) {
  return vessel == "specimen" || vessel == "water";
}

/// Takes so much out of a vessel, as mixed as it was filled.
WentIn take_out(std::map<bench::VesselName, WentIn>& holds, const bench::VesselName& from, double ml) {
  if (is_source(from)) {
    return {{from, ml}};
  }
  WentIn& whole = holds[from];
  const double all = sum_of(whole);
  const double share = all > 0 ? std::min(1.0, ml / all) : 0;
  WentIn taken = whole;
  scale(taken, share);
  scale(whole, 1 - share);
  return taken;
}

void put_in(WentIn& vessel, const WentIn& more) {
  for (const auto& [what, ml] : more) {
    vessel[what] += ml;
  }
}

double last_added_ml(const bench::State& state, const bench::VesselName& to, double asked_ml) {
  const auto vessel = state.vessels.find(to);
  return vessel == state.vessels.end() || vessel->second.trace.additions.empty()
             ? asked_ml
             : vessel->second.trace.additions.back().volume_ml;
}

/// Times and mixing from the trace of the tube.
void add_trace(TubeRead& read, const bench::State& state) {
  const auto vessel = state.vessels.find(read.vessel);
  if (vessel == state.vessels.end() || vessel->second.trace.additions.empty()) {
    return;
  }
  const auto& trace = vessel->second.trace;
  const double last_s = trace.additions.back().time_s;
  read.since_addition_s = state.time_s - last_s;
  read.mixed = mixed_since_last_addition(trace);
}

void note_reading(PhotometerBook& book, const bench::Measure& measure, const bench::State& state,
                  const bench::Outcome& outcome) {
  TubeRead read;
  read.vessel = measure.vessel;
  read.time_s = state.time_s;
  read.wavelength_nm = measure.wavelength_nm;
  read.value = outcome.reading->value;
  read.off_scale = outcome.reading->off_scale;
  read.went_in = book.holds[measure.vessel];
  if (measure.blank) {
    book.zero[measure.wavelength_nm] = read.went_in;
  }
  if (const auto zero = book.zero.find(measure.wavelength_nm); zero != book.zero.end()) {
    read.zero_set = true;
    read.zero_went_in = zero->second;
  }
  add_trace(read, state);
  book.reads.push_back(std::move(read));
}

} // namespace

double reagent_ml(const WentIn& went_in, const TestRule& test) {
  double sum = 0;
  for (std::size_t i = 0; i < test.reagents.size(); ++i) {
    sum += part_ml(went_in, test.reagents[i]) * (i < test.strengths.size() ? test.strengths[i] : 1.0);
  }
  return sum;
}

double others_ml(const WentIn& went_in, const TestRule& test) {
  double sum = sum_of(went_in);
  for (const std::string& reagent : test.reagents) {
    sum -= part_ml(went_in, reagent);
  }
  return sum;
}

double times_diluted(const TubeRead& read, const TestRule& test) {
  const double urine = part_ml(read.went_in, "specimen");
  return urine > 0 ? others_ml(read.went_in, test) / urine : 0;
}

TubeRole role_of_line(procedure::CurveLine line) {
  switch (line) {
  case procedure::CurveLine::Blank:
    return TubeRole::Blank;
  case procedure::CurveLine::Standard:
    return TubeRole::Standard;
  case procedure::CurveLine::Sample:
    return TubeRole::Sample;
  default:
    return TubeRole::None;
  }
}

RoleOf role_of(const TubeRead& read, const TestRule& test) {
  const bool reagent = reagent_ml(read.went_in, test) > 0;
  const auto& standards = test.curve->standards;
  const auto standard = std::find_if(standards.begin(), standards.end(), [&](const std::string& bottle) {
    return part_ml(read.went_in, bottle) > 0;
  });
  if (part_ml(read.went_in, "specimen") > 0) {
    const bool blank = !reagent && part_ml(read.went_in, test.curve->blank) > 0;
    return {reagent ? TubeRole::Sample : blank ? TubeRole::Blank : TubeRole::None, 0};
  }
  if (reagent && standard != standards.end()) {
    return {TubeRole::Standard, static_cast<std::size_t>(standard - standards.begin())};
  }
  return {};
}

void PhotometerBook::after(const sitting::Event& event, const bench::State& state,
                           const bench::Outcome& outcome) {
  if (const auto* pour = action_of<bench::Pour>(event)) {
    put_in(holds[pour->to], take_out(holds, pour->from, last_added_ml(state, pour->to, pour->volume_ml)));
  }
  if (const auto* filter = action_of<bench::Filter>(event)) {
    put_in(holds[filter->to],
           take_out(holds, filter->from, last_added_ml(state, filter->to, filter->volume_ml)));
  }
  if (const auto* dispense = action_of<bench::Dispense>(event)) {
    holds[dispense->to][dispense->reagent] += last_added_ml(state, dispense->to, dispense->volume_ml);
  }
  if (const auto* discard = action_of<bench::Discard>(event)) {
    holds.erase(discard->vessel);
  }
  if (const auto* measure = action_of<bench::Measure>(event); measure != nullptr && outcome.reading) {
    note_reading(*this, *measure, state, outcome);
  }
}

const TubeRead* PhotometerBook::last(const TestRule& test, TubeRole role, std::size_t standard) const {
  const auto found = std::find_if(reads.rbegin(), reads.rend(), [&](const TubeRead& read) {
    const RoleOf its = role_of(read, test);
    return its.role == role && (role != TubeRole::Standard || its.standard == standard);
  });
  return found == reads.rend() ? nullptr : &*found;
}

} // namespace matula::scoring
