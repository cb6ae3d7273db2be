#include "engine/scoring/ladder.hpp"

#include "engine/assets/world.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/hex.hpp"
#include "engine/command/verbs.hpp"
#include "engine/scoring/standards.hpp"

#include <fmt/format.h>

#include <ostream>

namespace matula::command {
namespace {

using scoring::LadderRung;

void print_csv(const std::vector<LadderRung>& rungs, const scoring::TestRule& test, std::ostream& out) {
  out << "concentration_mg_per_dl,reading,intensity,colour_hex,lab_l,lab_a,lab_b,luminance_on_black,print_"
         "contrast,"
         "granularity,opacity,piece_size_mm,clot_fraction,settled_share,colour_strength\n";
  for (const auto& rung : rungs) {
    const auto& s = rung.seen;
    out << fmt::format(
        "{:g},{},{:.3f},{},{:.2f},{:.2f},{:.2f},{:.5f},{:.4f},{:.5f},{:.4f},{:.4f},{:.4f},{:.4f},{:.4f}\n",
        rung.mg_per_dl, test.word(rung.read.grade), rung.read.intensity, hex_colour(s.display),
        s.colour_on_white.l, s.colour_on_white.a, s.colour_on_white.b, s.luminance_on_black, s.print_contrast,
        s.granularity, s.opacity, s.piece_size_mm, s.clot_fraction, s.settled_share, s.colour_strength);
  }
}

void print_table(const std::vector<LadderRung>& rungs, const scoring::TestRule& test, std::ostream& out) {
  out << fmt::format("{:>10}  {:8}  {:9}  {:7}  {:>8}  {:>8}  {:>6}  seen\n",
                     test.recipe.ladder_species +
                         (test.recipe.ladder_species == procedure::of_ph ? "" : ", mg/dL"),
                     "reading", "intensity", "colour", "strength", "on black", "print");
  for (const auto& rung : rungs) {
    out << fmt::format("{:>10g}  {:8}  {:9.2f}  {:7}  {:8.4f}  {:8.4f}  {:6.3f}  {}\n", rung.mg_per_dl,
                       test.word(rung.read.grade), rung.read.intensity, hex_colour(rung.seen.display),
                       rung.seen.colour_strength, rung.seen.luminance_on_black, rung.seen.print_contrast,
                       rung.read.seen);
  }
}

} // namespace

int run_ladder(const Ladder& asked, std::ostream& out, std::ostream& err) {
  const auto folder = assets::folder();
  const auto world = assets::load(folder);
  const auto standards = scoring::load_standards(folder);
  const auto plain = scoring::load_plain_urine(folder);
  if (!world || !standards || !plain) {
    err << scenario::to_text(!world ? world.error() : !standards ? standards.error() : plain.error()) << '\n';
    return exit_bad_input;
  }
  const auto& test = *standards->rules.find_test(asked.test);
  const auto& recipe = standards->recipes.at(asked.test);
  std::vector<LadderRung> rungs;
  for (const double mg_per_dl : asked.mg_per_dl.empty() ? recipe.ladder_mg_per_dl : asked.mg_per_dl) {
    rungs.push_back(scoring::climb(**world, *plain, recipe, test.scale, mg_per_dl));
    if (!rungs.back().stopped_because.empty()) {
      err << fmt::format("{} at {:g} mg/dL could not be finished: {}\n", asked.test, mg_per_dl,
                         rungs.back().stopped_because);
      return exit_bad_input;
    }
  }
  if (asked.csv) {
    print_csv(rungs, test, out);
  } else {
    print_table(rungs, test, out);
  }
  return exit_good;
}

} // namespace matula::command
