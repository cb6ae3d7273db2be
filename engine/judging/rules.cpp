#include "engine/judging/rules.hpp"

#include "engine/strict/file.hpp"
#include "engine/strict/table.hpp"

namespace matula::judging {

tl::expected<Rules, scenario::Problems> load_rules(const std::filesystem::path& assets_folder) {
  const strict::Range count{1, 1000000, ""};
  const strict::Range share{0, 1, ""};
  const strict::Range per_mille{0, 1000, "per mille"};
  strict::File file(assets_folder / "records" / "judging.toml");
  const strict::Table root = file.root();
  Rules rules;
  const auto agreement = root.table("agreement");
  rules.agreement_from = agreement.integer("from", count);
  rules.bias_from = agreement.integer("bias_from", count);
  rules.draws = agreement.integer("draws", count);
  rules.coverage = agreement.number("coverage", share);
  const auto items = root.table("items");
  rules.students_from = items.integer("students_from", count);
  rules.discrimination_from = items.integer("discrimination_from", count);
  rules.right_from = items.integer("right_from", per_mille);
  rules.hard_below = items.number("hard_below", share);
  rules.easy_above = items.number("easy_above", share);
  rules.flat_below = items.number("flat_below", share);
  rules.best_share = items.number("best_share", {0.01, 0.5, ""});
  rules.sittings_at_once = items.integer("sittings_at_once", count);
  const auto lines = root.table("lines");
  rules.most_readings = lines.integer("most", count);
  const auto standard = root.table("standard");
  rules.mark_from = standard.integer("from", per_mille);
  rules.mark_to = standard.integer("to", per_mille);
  rules.mark_step = standard.integer("step", {1, 1000, "per mille"});
  rules.borderline = standard.integer("borderline", per_mille);
  for (const auto& table : {agreement, items, lines, standard}) {
    static_cast<void>(table.text("source"));
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return rules;
}

} // namespace matula::judging
