#include "engine/author/compose.hpp"

#include "engine/author/recipe_here.hpp"
#include "engine/author/save.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/hand_written.hpp"
#include "engine/command/study.hpp"
#include "engine/command/verbs.hpp"
#include "engine/command/write_file.hpp"
#include "engine/strict/file.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <ostream>

namespace matula::command {
namespace {

using author::Composition;
using author::Shelf;

nlohmann::json shown_json(const Composition& made) {
  auto all = nlohmann::json::array();
  for (const auto& shown : made.shown) {
    all.push_back({{"test", shown.test},
                   {"word", shown.word},
                   {"intensity", shown.intensity.value_or(0)},
                   {"from_line", shown.from_line.value_or(0)},
                   {"seen", shown.seen}});
  }
  return all;
}

nlohmann::json to_json(const Composition& made, const Shelf& shelf) {
  nlohmann::json all;
  auto& specimen = all["specimen"];
  specimen["ph"] = made.specimen.target_ph;
  specimen["yellow"] = made.specimen.urochrome_a420;
  for (const auto& line : author::lines_of(made.specimen, *shelf.limits, shelf.world->catalogue)) {
    specimen[line.place.section][line.place.key] = line.quantity;
  }
  all["shows"] = {{"specific_gravity", made.liquid.gravity},
                  {"density_20_20", made.liquid.density_20},
                  {"ph", made.liquid.ph},
                  {"colour", made.liquid.colour},
                  {"clarity", made.liquid.clarity},
                  {"odours", made.liquid.odours},
                  {"mosm_per_kg", made.liquid.osmolality},
                  {"chloride_mmol_per_l", made.liquid.chloride_mmol_per_l}};
  all["tests"] = shown_json(made);
  all["warnings"] = made.warnings;
  all["tubes"] = made.tubes;
  return all;
}

void print(const Composition& made, const Shelf& shelf, std::ostream& out) {
  out << fmt::format("[specimen]\nph = {:g}\nyellow = {:g}\n", made.specimen.target_ph,
                     made.specimen.urochrome_a420);
  std::string section;
  for (const auto& line : author::lines_of(made.specimen, *shelf.limits, shelf.world->catalogue)) {
    out << (line.place.section == section ? "" : "[specimen." + line.place.section + "]\n") << line.place.key
        << " = \"" << line.quantity << "\"\n";
    section = line.place.section;
  }
  out << fmt::format(
      "\n# shows: specific gravity {:.4f}, pH {:.2f}, {}, {}; {:.0f} mOsm/kg, chloride {:.0f} mmol/L\n",
      made.liquid.gravity, made.liquid.ph, made.liquid.colour, made.liquid.clarity, made.liquid.osmolality,
      made.liquid.chloride_mmol_per_l);
  for (const auto& shown : made.shown) {
    out << fmt::format("# {}: {}{}: {}\n", shown.title, shown.word,
                       shown.from_line ? fmt::format(", {:.2f} grades from the next word", *shown.from_line)
                                       : std::string(),
                       shown.seen);
  }
  for (const auto& warning : made.warnings) {
    out << "# but: " << warning << '\n';
  }
}

/// What a case made from nothing still needs is said in it.
scenario::Scenario drafted(const Shelf& shelf, const Composition& made, const author::Wish& wish) {
  auto draft = author::plain_case(shelf);
  draft.title = "A composed case";
  draft.level = "exam";
  draft.story = "Saint Brannoc's Teaching Hospital. One specimen.";
  draft.debrief = "Write here what a competent reader should have come to.";
  draft.patient = {"Jory Menhenick (invented)", "41, male", "Outpatients", "Routine examination, please",
                   "Mid-stream, clean cup"};
  draft.specimen = made.specimen;
  draft.asked.look = wish.colour || wish.clarity;
  draft.asked.specific_gravity = wish.gravity.has_value();
  draft.reagents_out = {"water"};
  for (const auto& test : shelf.standards->rules.tests) {
    if (wish.tests.count(test.key) > 0) {
      draft.asked.procedures.push_back(test.key);
      (void)author::put_out(shelf.standards->recipes.at(test.key), test.curve, draft.reagents_out);
    }
  }
  return draft;
}

} // namespace

int run_compose(const Compose& asked, std::ostream& out, std::ostream& err) {
  std::error_code ignored;
  if (asked.from.empty() && !asked.output.empty() && std::filesystem::exists(asked.output, ignored)) {
    err << fmt::format(
        "{0}: found a file that is already there; expected a new name, or --from {0} to change "
        "that case\n",
        asked.output);
    return exit_bad_input;
  }
  const auto study = load_study();
  if (!study) {
    err << scenario::to_text(study.error()) << '\n';
    return exit_bad_input;
  }
  auto base = author::plain_case(*study->shelf);
  std::string text;
  if (!asked.from.empty()) {
    auto read = read_hand_written(asked.from, study->ground->world->catalogue);
    if (!read) {
      err << scenario::to_text(read.error()) << '\n';
      return exit_bad_input;
    }
    base = std::move(read->scenario);
    text = std::move(read->text);
  }
  const auto wish = author::wish_from(asked.wishes, *study->shelf);
  if (!wish) {
    err << fmt::format("{}\n", fmt::join(wish.error(), "\n"));
    return exit_wrong_call;
  }
  const auto made = author::compose(*study->shelf, base, *wish);
  if (!made) {
    if (asked.json) {
      out << nlohmann::json{{"refused", made.error()}}.dump(2) << '\n';
    }
    err << fmt::format("{}\n", fmt::join(made.error(), "\n"));
    return exit_bad_input;
  }
  if (asked.json) {
    out << to_json(*made, *study->shelf).dump(2) << '\n';
  } else {
    print(*made, *study->shelf, out);
  }
  if (asked.output.empty()) {
    return exit_good;
  }
  const auto written =
      text.empty()
          ? strict::Edited(author::write_case(drafted(*study->shelf, *made, *wish),
                                              "# Made by `matula compose`.\n", *study->shelf))
          : author::save(text, author::changes_for(text, base.specimen, made->specimen, *study->shelf));
  if (!written) {
    err << written.error() << '\n';
    return exit_bad_input;
  }
  return write_file(asked.output, *written, err) ? exit_good : exit_bad_input;
}

} // namespace matula::command
