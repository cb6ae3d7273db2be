#include "engine/export/codes.hpp"

#include "engine/strict/file.hpp"
#include "engine/strict/table.hpp"

namespace matula::exports {

tl::expected<Codes, scenario::Problems> load_codes(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "records" / "codes.toml");
  const strict::Table root = file.root();
  Codes codes;
  codes.notice = root.text("notice");
  const auto panel = root.table("panel");
  codes.panel = panel.text("loinc");
  codes.panel_name = panel.text("name");
  static_cast<void>(panel.text("source"));
  for (const auto& row : root.tables("code")) {
    Code code{row.text_or("loinc", ""), row.text_or("name", ""), row.text_or("ucum", ""), row.text("method")};
    static_cast<void>(row.text("source"));
    for (const auto& item : row.texts_or_none("items")) {
      codes.by_item[item] = code;
    }
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return codes;
}

} // namespace matula::exports
