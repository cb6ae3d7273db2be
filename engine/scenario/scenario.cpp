#include "engine/scenario/scenario.hpp"

#include "engine/procedure/procedure.hpp"
#include "engine/reception/book.hpp"
#include "engine/scenario/parts.hpp"

#include <cstdint>

namespace matula::scenario {

namespace {

Scenario read_all(strict::File& file, const Limits& limits, const matter::Catalogue& catalogue) {
  const strict::Table root = file.root();
  Scenario scenario;
  scenario.title = root.text("title");
  scenario.level = root.word("level", {"newcomer", "first", "trap", "exam"});
  scenario.seed = static_cast<std::uint64_t>(root.integer("seed", limits.ranges.at("seed")));
  scenario.story = root.text("story");
  scenario.debrief = root.text("debrief");
  scenario.patient = read_patient(root);
  scenario.specimen = read_specimen(root, limits, catalogue);
  scenario.collection = read_collection(root, limits, scenario.patient, scenario.specimen);
  read_conditions(root, limits, catalogue, scenario);
  read_rules(root, limits, scenario.rules);
  scenario.asked = read_asked(root);
  scenario.marking = read_marking(root, limits);
  scenario.decisions = read_decisions(root, limits);
  check_reagents(root, scenario.asked, scenario.reagents_out);
  return scenario;
}

} // namespace

/// FNV-1a, 64 bits (Fowler, Noll, Vo): tells an edited file from the one a sitting began with.
std::string text_hash(std::string_view text) {
  std::uint64_t hash = 14695981039346656037ULL;
  for (const char letter : text) {
    hash = (hash ^ static_cast<unsigned char>(letter)) * 1099511628211ULL;
  }
  constexpr const char* digits = "0123456789abcdef";
  std::string words;
  for (int shift = 60; shift >= 0; shift -= 4) {
    words += digits[(hash >> static_cast<unsigned>(shift)) & 15U];
  }
  return words;
}

tl::expected<Scenario, Problems> parse(std::string_view text, const std::string& file_name,
                                       const matter::Catalogue& catalogue) {
  const auto& limits = shipped_limits();
  if (!limits) {
    return tl::make_unexpected(limits.error());
  }
  if (const auto& book = reception::shipped_book(); !book) {
    return tl::make_unexpected(book.error());
  }
  if (!procedure::shipped()) {
    return tl::make_unexpected(procedure::shipped().error());
  }
  strict::File file(std::string(text), file_name);
  Scenario scenario = read_all(file, *limits, catalogue);
  Problems problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  scenario.key = std::filesystem::path(file_name).stem().string();
  scenario.file = file_name;
  scenario.content_hash = text_hash(text);
  return scenario;
}

tl::expected<Scenario, Problems> load(const std::filesystem::path& file, const matter::Catalogue& catalogue) {
  std::string text;
  if (!strict::read_text(file, text)) {
    return tl::make_unexpected(
        Problems{{file.string(), 0, 0, "", "no readable file", "a scenario file at this place"}});
  }
  return parse(text, file.string(), catalogue);
}

} // namespace matula::scenario
