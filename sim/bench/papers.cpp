#include "sim/bench/papers.hpp"

#include "sim/appearance/optics_tables.hpp"
#include "sim/bench/life.hpp"
#include "sim/bench/pour.hpp"
#include "sim/bench/words.hpp"
#include "sim/paper/pad_look.hpp"

#include <algorithm>
#include <cmath>

namespace matula::bench {

namespace {

constexpr double young_s = 300;         // Colours still come and go.
constexpr double old_s = 1800;          // A paper so old is dry and dead.
constexpr std::int64_t young_ticks = 4; // One second.
constexpr std::int64_t resting_ticks = 40;
constexpr double least_dip_s = 0.2;     // Touched and out: the pads stay half dry.
constexpr std::size_t most_papers = 12; // Room on the bench.

const paper::PaperKind* kind_of(const Setup& setup, const std::string& key) {
  if (setup.papers == nullptr) {
    return nullptr;
  }
  const auto found = std::find_if(setup.papers->begin(), setup.papers->end(),
                                  [&](const paper::PaperKind& kind) { return kind.key == key; });
  return found == setup.papers->end() ? nullptr : &*found;
}

PaperState* find_piece(State& state, const std::string& name) {
  const auto found = std::find_if(state.papers.begin(), state.papers.end(),
                                  [&](const PaperState& paper) { return paper.piece.name == name; });
  return found == state.papers.end() ? nullptr : &*found;
}

Outcome no_such_paper(const std::string& name) {
  return refused("There is no paper '" + name + "' on the bench.");
}

void live(State& state, const Setup& setup, PaperState& paper) {
  const double seconds = static_cast<double>(state.ticks - paper.piece.lived_ticks) * tick_s;
  paper.piece.lived_ticks = state.ticks;
  if (seconds > 0 && paper.piece.wetted_s >= 0) {
    paper::live(paper.piece, *kind_of(setup, paper.piece.kind), *setup.chemistry, setup.room_c, seconds);
  }
}

std::int64_t period(const State& state, const PaperState& paper) {
  return bench_s(state) - paper.piece.wetted_s < young_s ? young_ticks : resting_ticks;
}

} // namespace

Outcome dip_paper(State& state, const Setup& setup, const DipPaper& action) {
  const paper::PaperKind* kind = kind_of(setup, action.paper);
  if (kind == nullptr) {
    return refused("There is no paper of the kind '" + action.paper + "' on the bench.");
  }
  const auto vessel = state.vessels.find(action.vessel);
  if (vessel == state.vessels.end()) {
    return refused(no_such_vessel(action.vessel));
  }
  if (state.papers.size() >= most_papers) {
    return refused("The bench is full of papers: discard some first.");
  }
  if (!(action.seconds >= least_dip_s)) {
    return refused("Say how long to dip: about 1 s, so that every pad is wet.");
  }
  if (state.floating && state.floating->vessel == action.vessel) {
    return refused("Lift the float out of " + spoken(action.vessel) + " first.");
  }
  if (vessel->second.place == Place::Flame && state.flame_on) {
    return refused("Take " + spoken(action.vessel) + " out of the flame first.");
  }
  catch_up(state, setup, action.vessel, vessel->second);
  PaperState paper;
  paper.trace.vessel = action.vessel;
  paper.trace.dip_s = action.seconds;
  paper.trace.specimen_c = column::mean_temperature_c(vessel->second.column);
  paper.trace.mixed_before = !vessel->second.trace.mixed_at_s.empty();
  paper.piece = paper::dry_piece(*kind, *setup.chemistry->catalogue, setup.room_c);
  if (!paper::dip(paper.piece, *kind, vessel->second.column, *setup.chemistry->catalogue, action.seconds)) {
    return refused("There is too little in " + spoken(action.vessel) + " to wet the paper.");
  }
  Outcome outcome;
  outcome.caution = touch(state, vessel->second, action.vessel);
  disturbed(state, setup, vessel->second);
  advance(state, setup, action.seconds);
  paper.piece.name = kind->key + "-" + std::to_string(++state.papers_used);
  paper.piece.wetted_s = bench_s(state);
  paper.piece.lived_ticks = state.ticks;
  state.papers.push_back(std::move(paper));
  return outcome;
}

Outcome blot_paper(State& state, const Setup& setup, const BlotPaper& action) {
  PaperState* paper = find_piece(state, action.paper);
  if (paper == nullptr) {
    return no_such_paper(action.paper);
  }
  live(state, setup, *paper);
  paper->piece.blotted = true;
  return {};
}

Outcome look_at_paper(State& state, const Setup& setup, const LookAtPaper& action) {
  PaperState* paper = find_piece(state, action.paper);
  if (paper == nullptr) {
    return no_such_paper(action.paper);
  }
  live(state, setup, *paper);
  paper->trace.looked_at_s.push_back(state.time_s);
  return {};
}

Outcome drop_on(State& state, const Setup& setup, const DropOn& action) {
  PaperState* paper = find_piece(state, action.paper);
  if (paper == nullptr) {
    return no_such_paper(action.paper);
  }
  const matter::Reagent* reagent = setup.chemistry->catalogue->find_reagent(action.reagent);
  const bool out = std::find(setup.reagents_out.begin(), setup.reagents_out.end(), action.reagent) !=
                   setup.reagents_out.end();
  if (reagent == nullptr || !out) {
    return refused("There is no bottle '" + action.reagent + "' on the shelf.");
  }
  if (!(action.drops > 0)) {
    return refused("Say how many drops: 1 or 2 are enough.");
  }
  live(state, setup, *paper);
  const paper::PaperKind& kind = *kind_of(setup, paper->piece.kind);
  for (std::size_t i = 0; i < paper->piece.pads.size(); ++i) {
    paper::drip(paper->piece.pads[i], kind.pads[i], dose(setup, *reagent, action.drops * reagent->drop_ml));
  }
  if (paper->piece.wetted_s < 0) {
    paper->piece.wetted_s = bench_s(state);
  }
  paper->trace.drops.push_back({state.time_s, action.reagent, action.drops});
  Outcome outcome;
  outcome.caution = reagent->caution;
  return outcome;
}

Outcome lay_paper(State& state, const Setup& setup) {
  const paper::PaperKind* kind = kind_of(setup, "filter");
  if (kind == nullptr || !state.filter_residue) {
    return refused("No paper has been filtered through: filter something first.");
  }
  if (state.papers.size() >= most_papers) {
    return refused("The bench is full of papers: discard some first.");
  }
  PaperState paper;
  paper.trace.vessel = state.filter_residue->from;
  paper.trace.source = state.filter_residue->source;
  paper.trace.filtered_s = state.filter_residue->filtered_s;
  paper.piece.kind = kind->key;
  paper.piece.name = kind->key + "-" + std::to_string(++state.papers_used);
  paper.piece.pads = {paper::pressed_pad(state.filter_residue->held, kind->pads.front())};
  paper.piece.blotted = true;
  paper.piece.wetted_s = bench_s(state);
  paper.piece.lived_ticks = state.ticks;
  state.filter_residue.reset();
  state.papers.push_back(std::move(paper));
  return {};
}

Outcome discard_paper(State& state, const DiscardPaper& action) {
  const auto found = std::find_if(state.papers.begin(), state.papers.end(),
                                  [&](const PaperState& paper) { return paper.piece.name == action.paper; });
  if (found == state.papers.end()) {
    return no_such_paper(action.paper);
  }
  state.papers.erase(found);
  return {};
}

void live_papers(State& state, const Setup& setup) {
  for (PaperState& paper : state.papers) {
    const bool alive = paper.piece.wetted_s >= 0 && bench_s(state) - paper.piece.wetted_s < old_s;
    if (alive && state.ticks - paper.piece.lived_ticks >= period(state, paper)) {
      live(state, setup, paper);
    }
  }
}

void see_papers(Scene& scene, const State& state, const Setup& setup, optics::Lamp lamp) {
  if (setup.papers == nullptr || setup.cards == nullptr) {
    return;
  }
  const optics::Colorimetry& colorimetry = setup.optics->colorimetry;
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  for (const PaperState& paper : state.papers) {
    const paper::PaperKind& kind = *kind_of(setup, paper.piece.kind);
    SeenPaper seen{paper.piece.name,    kind.key, kind.label, state.time_s - paper.piece.wetted_s,
                   paper.piece.blotted, {}};
    for (std::size_t i = 0; i < kind.pads.size(); ++i) {
      const auto light =
          paper::reflectance(paper.piece.pads[i], kind.pads[i], catalogue, setup.optics->scatter);
      SeenPad pad;
      pad.key = kind.pads[i].key;
      pad.label = kind.pads[i].label;
      pad.colour = paper::colour_of(light, colorimetry, lamp);
      const auto spots = paper::spots_on(paper.piece.pads[i], kind.pads[i], catalogue, setup.optics->scatter);
      pad.spots = spots.count;
      pad.spot_cover = spots.cover;
      if (spots.count > 0) {
        pad.spot = paper::colour_of(spots.spot, colorimetry, lamp);
        pad.ground = paper::colour_of(spots.ground, colorimetry, lamp);
      }
      seen.pads.push_back(pad);
    }
    scene.papers.push_back(std::move(seen));
  }
  for (const paper::PaperKind& kind : *setup.papers) {
    const auto card = setup.cards->find(kind.key);
    if (card == setup.cards->end()) {
      continue;
    }
    SeenCard seen{kind.key, kind.label, {}};
    for (std::size_t i = 0; i < kind.pads.size(); ++i) {
      SeenCardRow row{kind.pads[i].key, kind.pads[i].label, kind.pads[i].unit, kind.pads[i].read_at_s, {}};
      for (const paper::CardField& field : card->second[i]) {
        row.fields.emplace_back(field.word, paper::colour_of(field.reflectance, colorimetry, lamp));
      }
      seen.rows.push_back(std::move(row));
    }
    scene.cards.push_back(std::move(seen));
  }
}

} // namespace matula::bench
