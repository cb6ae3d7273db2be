#include "engine/window/help.hpp"

#include "engine/strict/table.hpp"

namespace matula::window {

tl::expected<std::vector<HelpTopic>, scenario::Problems>
load_help(const std::filesystem::path& assets_folder) {
  strict::File file(assets_folder / "help.toml");
  std::vector<HelpTopic> topics;
  for (const strict::Table& row : file.root().tables("topic")) {
    HelpTopic topic;
    topic.title = row.text("title");
    topic.tests = row.texts_or_none("tests");
    topic.steps = row.texts_or_none("steps");
    topic.grades = row.texts_or_none("grades");
    topic.source = row.text("source");
    topics.push_back(topic);
  }
  auto problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return topics;
}

} // namespace matula::window
