#include "engine/assets/world.hpp"
#include "engine/drafting/entry.hpp"
#include "engine/drafting/studio_impl.hpp"
#include "engine/drafting/substances.hpp"
#include "sim/bench/bench.hpp"
#include "sim/bench/seen.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include <algorithm>
#include <cctype>
#include <cmath>

namespace matula::drafting {

namespace {

/// "0.31 grades below 3+".
std::string say_line(double intensity, double away, const scoring::TestRule& test) {
  const auto last = static_cast<double>(test.words.size()) - 1.5; // The line between the last two words.
  const double line = std::clamp(std::floor(intensity) + 0.5, 0.5, last);
  const bool below = intensity < line;
  const auto next = static_cast<std::size_t>(below ? line + 0.5 : line - 0.5);
  return fmt::format("{:.2f} grades {} {}", away, below ? "below" : "above", test.words[next]);
}

} // namespace

void say_liquid(const author::Liquid& liquid, Seen& seen) {
  const auto degrees = fmt::format("{:.1f} °C", liquid.temperature_c);
  seen.figures = {
      {"colour", liquid.colour},
      {"clarity", liquid.clarity},
      {"odour",
       liquid.odours.empty() ? "nothing in particular" : fmt::format("{}", fmt::join(liquid.odours, ", "))},
      {"specific gravity, true float at 20 °C", fmt::format("{:.4f}", liquid.gravity)},
      {"density 20/20", fmt::format("{:.4f}", liquid.density_20)},
      {"the case's float, at " + degrees,
       liquid.float_reads ? fmt::format("{:.4f}", *liquid.float_reads) : "no room for it"},
      {"pH", fmt::format("{:.2f}", liquid.ph)},
      {"osmolality", fmt::format("{:.0f} mOsm/kg", liquid.osmolality)},
      {"chloride that makes up the charges", fmt::format("{:.0f} mmol/L", liquid.chloride_mmol_per_l)}};
}

SeenTest say_test(const author::Shown& shown, const author::Shelf& shelf) {
  SeenTest test;
  test.test = shown.test;
  test.title = shown.title;
  test.seen = shown.seen;
  if (!shown.stopped_because.empty()) {
    test.word = "cannot be done";
    test.note = shown.stopped_because;
    return test;
  }
  test.word = shown.word;
  test.note = shown.other_bottle ? "with a bottle that is not out" : "";
  const auto* rule = shelf.standards->rules.find_test(shown.test);
  if (shown.intensity && shown.from_line && rule != nullptr) {
    test.line = say_line(*shown.intensity, *shown.from_line, *rule);
    test.near_line = *shown.from_line < shelf.compose.clear_of_line;
  }
  return test;
}

SeenTest say_float(const Made& made) {
  SeenTest test;
  test.test = float_key;
  test.title = "The case's float";
  test.version = made.version;
  test.word = made.liquid.float_reads ? fmt::format("{:.4f}", *made.liquid.float_reads) : "cannot be done";
  test.seen =
      made.liquid.float_reads ? fmt::format("eye level, at {:.1f} °C", made.liquid.temperature_c) : "";
  test.note = made.liquid.float_reads ? "" : "There is too little urine for it to swim in the jar.";
  return test;
}

Looks float_looks(const Made& made, const appearance::View& view) {
  Looks looks;
  if (made.floated && made.setup) {
    const bench::Scene scene = bench::make_scene(*made.floated, *made.setup, view);
    looks.floating = scene.floating;
    looks.vessel = bench::look(*made.floated, *made.setup, made.floated->floating->vessel, view);
  }
  return looks;
}

std::vector<SeenWorth> say_worth(const std::vector<author::LedgerWorth>& worth) {
  std::vector<SeenWorth> said;
  for (const auto& ledger : worth) {
    SeenWorth one{ledger.ledger == "process" ? "Procedure" : ledger.ledger, ledger.marks, {}};
    one.ledger.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(one.ledger.front())));
    for (const auto& [label, marks] : ledger.parts) {
      one.parts.push_back(fmt::format("{}: {}", label, marks));
    }
    said.push_back(std::move(one));
  }
  return said;
}

Looks looks_of(const author::Shown& shown, const bench::Setup& setup, const author::Shelf& shelf,
               const appearance::View& view) {
  Looks looks;
  const auto* rule = shelf.standards->rules.find_test(shown.test);
  if (shown.state == nullptr || rule == nullptr || !shown.stopped_because.empty()) {
    return looks;
  }
  if (rule->result == procedure::Result::Word && rule->scale.on_paper()) {
    const bench::Scene scene = bench::make_scene(*shown.state, setup, view);
    looks.pad = bench::pad_in(scene, shown.vessel, rule->scale.paper.pad);
    looks.row = bench::card_row_in(scene, rule->scale.paper.paper, rule->scale.paper.pad);
  } else if (shown.state->vessels.count(shown.vessel) > 0) {
    looks.vessel = bench::look(*shown.state, setup, shown.vessel, view);
  }
  return looks;
}

Proposal say_proposal(const author::Composition& made, const std::vector<author::Change>& changes,
                      const std::string& text) {
  Proposal proposal;
  for (const auto& change : changes) {
    Proposal::Line line;
    line.label = spoken(strict::path_from(change.path).back().key);
    line.from = typed_at(text, change.path);
    line.to = change.value ? typed_at("value = " + *change.value + "\n", "value") : "";
    proposal.lines.push_back(std::move(line));
  }
  for (const auto& shown : made.shown) {
    proposal.shows.push_back(fmt::format(
        "{}: {}{}: {}.", shown.title, shown.word,
        shown.from_line ? fmt::format(", {:.2f} grades from the next word", *shown.from_line) : "",
        shown.seen));
  }
  proposal.shows.push_back(
      fmt::format("Specific gravity {:.4f}, pH {:.2f}, {}, {}; {:.0f} mOsm/kg, chloride {:.0f} mmol/L.",
                  made.liquid.gravity, made.liquid.ph, made.liquid.colour, made.liquid.clarity,
                  made.liquid.osmolality, made.liquid.chloride_mmol_per_l));
  proposal.warnings = made.warnings;
  return proposal;
}

} // namespace matula::drafting
