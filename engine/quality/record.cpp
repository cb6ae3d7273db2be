#include "engine/quality/record.hpp"

#include "engine/strict/file.hpp"

#include <nlohmann/json.hpp>

#include <fstream>
#include <sstream>

namespace matula::quality {

namespace {

using Json = nlohmann::ordered_json;

std::string to_line(const Entry& entry) {
  const Json json{{"day", entry.day},         {"test", entry.test},     {"control", entry.control},
                  {"reading", entry.reading}, {"bottle", entry.bottle}, {"decision", entry.decision},
                  {"remark", entry.remark}};
  return json.dump();
}

std::string words_at(const Json& json, const char* key) {
  return json.contains(key) && json.at(key).is_string() ? json.at(key).get<std::string>() : std::string();
}

/// What is wrong with an entry that follows `last_day`; empty when nothing is.
std::string wrong_with(const Entry& entry, int last_day) {
  if (entry.day < last_day) {
    return "day " + std::to_string(entry.day) + " after day " + std::to_string(last_day);
  }
  if (entry.test.empty() || entry.control.empty() || entry.reading.empty()) {
    return "no test, control or reading";
  }
  if (entry.decision != "accept" && entry.decision != "reject") {
    return "decision \"" + entry.decision + "\"";
  }
  return entry.decision == "reject" && entry.remark.empty() ? "a rejection without a remark" : "";
}

constexpr const char* expected_line =
    R"({"day": 3, "test": "benedict", "control": "negative", "reading": "negative", "bottle": "", "decision": "accept" or "reject", "remark": what was done after a rejection}, days never going back)";

} // namespace

tl::expected<std::vector<Entry>, scenario::Problems> read_record(const std::filesystem::path& file) {
  std::vector<Entry> entries;
  std::string text;
  if (!std::filesystem::exists(file)) {
    return entries;
  }
  scenario::Problems problems;
  if (!strict::read_text(file, text)) {
    problems.push_back({file.string(), 0, 0, "", "no readable file", "a control record"});
    return tl::make_unexpected(problems);
  }
  std::istringstream lines(text);
  std::string line;
  for (int number = 1; std::getline(lines, line); ++number) {
    const Json json = Json::parse(line, nullptr, false);
    Entry entry;
    if (!json.is_discarded() && json.is_object()) {
      const bool whole = json.contains("day") && json.at("day").is_number_integer();
      entry = {whole ? json.at("day").get<int>() : 0,
               words_at(json, "test"),
               words_at(json, "control"),
               words_at(json, "reading"),
               words_at(json, "bottle"),
               words_at(json, "decision"),
               words_at(json, "remark")};
    }
    const std::string wrong =
        json.is_discarded() ? "no JSON object" : wrong_with(entry, entries.empty() ? 1 : entries.back().day);
    if (!wrong.empty()) {
      problems.push_back({file.string(), number, 1, line, wrong, expected_line});
      continue;
    }
    entries.push_back(entry);
  }
  if (!problems.empty()) {
    return tl::make_unexpected(std::move(problems));
  }
  return entries;
}

std::string append(const std::filesystem::path& file, const Entry& entry) {
  const auto before = read_record(file);
  if (!before) {
    return scenario::to_text(before.error());
  }
  const std::string wrong = wrong_with(entry, before->empty() ? 1 : before->back().day);
  if (!wrong.empty()) {
    return "Found " + wrong + "; expected " + expected_line + ".";
  }
  std::ofstream out(file, std::ios::app | std::ios::binary);
  out << to_line(entry) << '\n';
  return out.flush() ? "" : "The control record " + file.string() + " cannot be written.";
}

} // namespace matula::quality
