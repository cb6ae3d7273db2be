#include "engine/generator/people.hpp"

#include "engine/strict/table.hpp"

namespace matula::generator {

namespace {

std::vector<std::string> names(const strict::Table& root, const std::string& key) {
  std::vector<std::string> read = root.texts_or_none(key);
  if (read.empty()) {
    root.complain(key, "a list of invented names in quotes");
  }
  return read;
}

} // namespace

tl::expected<People, scenario::Problems> read_people(const std::filesystem::path& file) {
  strict::File toml(file);
  const strict::Table root = toml.root();
  People people;
  people.female = names(root, "female");
  people.male = names(root, "male");
  people.surnames = names(root, "surnames");
  scenario::Problems problems = toml.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return people;
}

} // namespace matula::generator
