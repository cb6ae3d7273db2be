#include "engine/examination/plan.hpp"

#include "engine/examination/pack.hpp"
#include "engine/strict/table.hpp"

namespace matula::examination {

namespace {

PlannedCase read_case(const strict::Table& table) {
  PlannedCase one;
  int named = 0;
  const auto take = [&](const char* key, PlannedCase::From from) {
    if (table.has(key)) {
      one = {from, table.text(key), {}};
      ++named;
    }
  };
  take("scenario", PlannedCase::From::Scenario);
  take("pattern", PlannedCase::From::Pattern);
  take("forms", PlannedCase::From::Forms);
  if (named != 1) {
    table.complain("scenario", "\"FILE.toml\", or instead of it pattern = \"KEY\" or forms = \"FOLDER\"");
  }
  if (one.from == PlannedCase::From::Forms && table.has("unknown")) {
    one.unknown = table.text("unknown");
  }
  return one;
}

} // namespace

seal::Maybe<Plan> read_plan(const std::filesystem::path& file) {
  constexpr int longest_minutes = 1440;
  constexpr std::size_t longest_title = 200;
  strict::File read(file);
  const strict::Table root = read.root();
  Plan plan;
  plan.folder = file.parent_path();
  plan.title = root.text("title");
  if (plan.title.size() > longest_title || plan.title.find('\n') != std::string::npos) {
    root.complain("title", "one line of at most 200 letters");
  }
  plan.minutes = static_cast<std::uint32_t>(root.integer("minutes", {1, longest_minutes, "minutes"}));
  plan.delete_after = root.text("delete_after");
  if (!plan.delete_after.empty() && !is_date(plan.delete_after)) {
    root.complain("delete_after", "a day such as \"2027-07-31\"");
  }
  for (const strict::Table& table : root.tables("case")) {
    plan.cases.push_back(read_case(table));
  }
  if (plan.cases.size() > most_cases) {
    root.complain("case", "at most " + std::to_string(most_cases) + " cases");
  }
  if (auto problems = read.finish(); !problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return plan;
}

std::uint64_t seed_for(const seal::Hash& secret, const std::string& pseudonym, const std::string& label) {
  constexpr std::uint64_t highest = 2147483647; // As a scenario's seed.
  const seal::Hash drawn = seal::keyed_hash(
      secret, {seal::ByteWriter().text("matula seed-v1").text(pseudonym).text(label).bytes()});
  seal::ByteReader in(drawn);
  return 1 + in.u64() % highest;
}

} // namespace matula::examination
