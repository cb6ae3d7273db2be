#include "engine/generator/generate.hpp"

#include "engine/assets/world.hpp"
#include "engine/command/exit_codes.hpp"
#include "engine/command/verbs.hpp"

#include <fstream>
#include <ostream>
#include <system_error>

namespace matula::command {

namespace {

std::filesystem::path file_of(const std::string& pattern) {
  const std::filesystem::path as_file = pattern;
  return as_file.extension() == ".toml" ? as_file
                                        : generator::patterns_folder(assets::folder()) / (pattern + ".toml");
}

bool deliver(const generator::Variant& variant, const std::string& folder, std::ostream& out,
             std::ostream& err) {
  if (folder.empty()) {
    out << variant.text;
    return true;
  }
  std::error_code failed;
  std::filesystem::create_directories(folder, failed);
  const std::filesystem::path file = std::filesystem::path(folder) / (variant.key + ".toml");
  std::ofstream written(file, std::ios::binary);
  written << variant.text;
  if (!written.flush()) {
    err << file.string() << ": found a place that cannot be written to; name another folder\n";
    return false;
  }
  out << file.string() << '\n';
  return true;
}

} // namespace

int run_generate(const Generate& asked, std::ostream& out, std::ostream& err) {
  scenario::Problems problems;
  const matter::Catalogue catalogue = assets::load_catalogue(assets::folder(), problems);
  const auto people = generator::read_people(generator::people_file(assets::folder()));
  const auto pattern = generator::read_pattern(file_of(asked.pattern));
  if (!problems.empty() || !people || !pattern) {
    problems = !problems.empty() ? problems : !people ? people.error() : pattern.error();
    err << scenario::to_text(problems) << '\n';
    return exit_bad_input;
  }
  for (int i = 0; i < (asked.typical ? 1 : asked.count); ++i) {
    const auto seed = static_cast<std::uint64_t>(asked.seed) + static_cast<std::uint64_t>(i);
    const auto variant = generator::generate(*pattern, *people, seed, asked.typical, catalogue);
    if (!variant) {
      err << variant.error();
      return exit_bad_input;
    }
    if (!deliver(*variant, asked.output, out, err)) {
      return exit_bad_input;
    }
  }
  return exit_good;
}

} // namespace matula::command
