#include "engine/scoring/papers.hpp"

#include "sim/bench/papers.hpp"
#include "sim/reading/colour_strength.hpp"
#include "sim/reading/paper.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::scoring {
namespace {

optics::Lab lab_of(const optics::Xyz& colour) {
  return optics::to_lab(colour, optics::d65_white);
}

/// The papers alone, in daylight.
bench::Scene papers_of(const bench::State& state, const bench::Setup& setup) {
  bench::Scene scene;
  bench::see_papers(scene, state, setup, optics::Lamp::Daylight);
  return scene;
}

template <class Rows> auto with_key(const Rows& rows, const std::string& key) {
  return std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.key == key; });
}

std::optional<optics::Lab> colour_in(const bench::Scene& scene, const std::string& pad_key,
                                     const std::string& piece) {
  for (const bench::SeenPaper& paper : scene.papers) {
    const auto pad = with_key(paper.pads, pad_key);
    if (paper.name == piece && pad != paper.pads.end()) {
      return lab_of(pad->colour);
    }
  }
  return std::nullopt;
}

std::vector<reading::CardEntry> card_row(const bench::Scene& scene, const paper::PadKind& pad,
                                         const std::string& kind) {
  std::vector<reading::CardEntry> entries;
  for (const bench::SeenCard& card : scene.cards) {
    const auto row = with_key(card.rows, pad.key);
    if (card.kind != kind || row == card.rows.end()) {
      continue;
    }
    for (std::size_t i = 0; i < row->fields.size() && i < pad.levels.size(); ++i) {
      entries.push_back({row->fields[i].first, pad.levels[i].value, lab_of(row->fields[i].second)});
    }
  }
  return entries;
}

} // namespace

std::string find_paper(const bench::State& state, const std::string& kind) {
  const auto found = std::find_if(state.papers.rbegin(), state.papers.rend(),
                                  [&](const auto& paper) { return paper.piece.kind == kind; });
  return found == state.papers.rend() ? "" : found->piece.name;
}

std::optional<optics::Lab> pad_colour(const bench::State& state, const bench::Setup& setup,
                                      const reading::PaperScale& scale, const std::string& piece) {
  return colour_in(papers_of(state, setup), scale.pad, piece);
}

reading::GradeReading read_pad(const bench::State& state, const bench::Setup& setup,
                               const reading::Scale& how, const std::string& piece) {
  const reading::PaperScale& scale = how.paper;
  const bench::Scene scene = papers_of(state, setup);
  const auto seen = colour_in(scene, scale.pad, piece);
  if (!seen || setup.papers == nullptr) {
    return {reading::Grade::Negative, 0, "no such paper"};
  }
  if (how.kind == reading::ScaleKind::Colour) {
    const optics::Xyz colour = optics::from_lab(*seen, optics::d65_white);
    return reading::graded_by_lines(reading::colour_strength(colour, how.colour.hue_deg), how.colour);
  }
  std::vector<reading::CardEntry> row;
  const auto kind = with_key(*setup.papers, scale.paper);
  if (kind != setup.papers->end()) {
    const auto pad = with_key(kind->pads, scale.pad);
    row = pad == kind->pads.end() ? row : card_row(scene, *pad, scale.paper);
  }
  if (row.empty()) {
    return {reading::Grade::Negative, 0, "a paper without a card"};
  }
  const auto read = reading::read_paper(*seen, row);
  const double place = scale.values.empty() ? read.place : reading::place_of(read.value, scale.values);
  reading::GradeReading result;
  result.grade = static_cast<reading::Grade>(std::lround(place));
  result.intensity = place;
  result.seen = fmt::format("nearest to \"{}\" on the card", read.word);
  return result;
}

} // namespace matula::scoring
