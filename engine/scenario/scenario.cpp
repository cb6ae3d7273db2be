#include "engine/scenario/scenario.hpp"

#include "engine/procedure/procedure.hpp"
#include "engine/reception/book.hpp"
#include "engine/scenario/halves.hpp"
#include "engine/scenario/parts.hpp"

#include <cstdint>

namespace matula::scenario {

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

namespace {

/// What the specimen, the counter and the bench are made of, and what is asked.
void read_bench(const strict::Table& root, const Limits& limits, const matter::Catalogue& catalogue,
                Scenario& scenario) {
  scenario.seed = static_cast<std::uint64_t>(root.integer("seed", limits.ranges.at("seed")));
  scenario.story = root.text("story");
  scenario.patient = read_patient(root);
  scenario.specimen = read_specimen(root, limits, catalogue);
  scenario.collection = read_collection(root, limits, scenario.patient, scenario.specimen);
  read_conditions(root, limits, catalogue, scenario);
  read_rules(root, limits, scenario.rules);
  scenario.asked = read_asked(root);
  check_reagents(root, scenario.asked, scenario.reagents_out);
}

Scenario read_whole(const strict::Table& root, const Limits& limits, const matter::Catalogue& catalogue) {
  Scenario scenario;
  scenario.title = root.text("title");
  scenario.level = root.word("level", {"newcomer", "first", "trap", "exam"});
  scenario.debrief = root.text("debrief");
  read_bench(root, limits, catalogue, scenario);
  scenario.marking = read_marking(root, limits);
  scenario.decisions = read_decisions(root, limits);
  (void)read_review(root); // Who wants it asks review_of.
  return scenario;
}

Scenario read_bench_half(const strict::Table& root, const Limits& limits,
                         const matter::Catalogue& catalogue) {
  Scenario scenario;
  scenario.level = "exam";
  read_bench(root, limits, catalogue, scenario);
  scenario.decisions = read_questions(root);
  return scenario;
}

using ReadRoot = Scenario (*)(const strict::Table&, const Limits&, const matter::Catalogue&);

tl::expected<Scenario, Problems> parse_by(ReadRoot read, std::string_view text, const std::string& file_name,
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
  Scenario scenario = read(file.root(), *limits, catalogue);
  Problems problems = file.finish();
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  scenario.key = std::filesystem::path(file_name).stem().string();
  scenario.file = file_name;
  scenario.content_hash = text_hash(text);
  return scenario;
}

} // namespace

tl::expected<Scenario, Problems> parse(std::string_view text, const std::string& file_name,
                                       const matter::Catalogue& catalogue) {
  auto scenario = parse_by(read_whole, text, file_name, catalogue);
  if (const auto halves = scenario ? halve(std::string(text), file_name) : tl::make_unexpected(Problems{})) {
    scenario->bench_hash = text_hash(halves->kept);
  }
  return scenario;
}

tl::expected<Scenario, Problems> parse_bench_half(std::string_view text, const std::string& file_name,
                                                  const matter::Catalogue& catalogue) {
  auto scenario = parse_by(read_bench_half, text, file_name, catalogue);
  if (scenario) {
    scenario->bench_hash = scenario->content_hash;
  }
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
