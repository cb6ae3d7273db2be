#include "engine/reception/instructions.hpp"

#include "engine/reception/book.hpp"
#include "engine/strict/table.hpp"

namespace matula::reception {

tl::expected<std::vector<Sheet>, scenario::Problems>
load_instructions(const std::filesystem::path& assets_folder) {
  const auto& book = shipped_book();
  if (!book) {
    return tl::make_unexpected(book.error());
  }
  strict::File file(assets_folder / "reception" / "instructions.toml");
  std::vector<Sheet> sheets;
  for (const strict::Table& row : file.root().tables("sheet")) {
    Sheet sheet;
    sheet.key = row.text("key");
    sheet.title = row.text("title");
    sheet.kinds = row.words("kinds", book->keys("kind"));
    sheet.steps = row.texts_or_none("steps");
    sheet.source = row.text("source");
    if (sheet.steps.empty()) {
      row.complain("steps", "at least one step");
    }
    sheets.push_back(std::move(sheet));
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return sheets;
}

} // namespace matula::reception
