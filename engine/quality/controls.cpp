#include "engine/quality/controls.hpp"

#include "engine/scenario/parts.hpp"
#include "engine/strict/file.hpp"

#include <algorithm>

namespace matula::quality {

namespace {

const std::vector<std::string> grades{"negative", "trace", "1+", "2+", "3+", "4+"};

Control read_control(const strict::Table& row, const scenario::Limits& limits,
                     const matter::Catalogue& catalogue) {
  Control control;
  control.key = row.text("key");
  control.label = row.text("label");
  control.gravity = row.number("gravity", {0.99, 1.1, ""});
  control.specimen = scenario::read_specimen(row, limits, catalogue);
  const strict::Table targets = row.table("targets");
  for (const std::string& test : targets.keys()) {
    control.targets[test] = targets.word(test, grades);
  }
  (void)row.text("source");
  return control;
}

} // namespace

tl::expected<std::vector<Control>, scenario::Problems>
load_controls(const std::filesystem::path& assets_folder, const matter::Catalogue& catalogue) {
  const auto& limits = scenario::shipped_limits();
  if (!limits) {
    return tl::make_unexpected(limits.error());
  }
  strict::File file(assets_folder / "quality" / "controls.toml");
  std::vector<Control> controls;
  for (const strict::Table& row : file.root().tables("control")) {
    controls.push_back(read_control(row, *limits, catalogue));
    const std::string& key = controls.back().key;
    if (std::any_of(controls.begin(), controls.end() - 1, [&](const Control& c) { return c.key == key; })) {
      row.complain("key", "a key no other control has");
    }
  }
  scenario::Problems problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return controls;
}

const Control* find_control(const std::vector<Control>& controls, const std::string& key) {
  const auto found =
      std::find_if(controls.begin(), controls.end(), [&](const Control& c) { return c.key == key; });
  return found == controls.end() ? nullptr : &*found;
}

} // namespace matula::quality
