#include "engine/export/xapi.hpp"

#include "engine/records/squeeze.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

namespace matula::exports {

namespace {

using nlohmann::json;

constexpr const char* verbs = "http://adlnet.gov/expapi/verbs/";
constexpr const char* activities = "http://adlnet.gov/expapi/activities/";
constexpr double per_mille = 1000;

/// A name by content in the shape of a UUID (RFC 4122, version 5; the digest is BLAKE2b's).
std::string uuid_of(const std::string& text) {
  std::string d = records::content_name(text);
  d[12] = '5';
  d[16] = "89ab"[static_cast<std::size_t>(d[16] % 4)];
  return d.substr(0, 8) + '-' + d.substr(8, 4) + '-' + d.substr(12, 4) + '-' + d.substr(16, 4) + '-' +
         d.substr(20);
}

json words(const std::string& text) {
  return {{"en", text}};
}

/// Letters a web address takes as they are; all others as their bytes.
std::string in_address(const std::string& text) {
  std::string safe;
  for (const char letter : text) {
    const bool plain = (letter >= 'a' && letter <= 'z') || (letter >= 'A' && letter <= 'Z') ||
                       (letter >= '0' && letter <= '9') || letter == '-' || letter == '_' || letter == '.';
    safe += plain ? std::string(1, letter) : fmt::format("%{:02X}", static_cast<unsigned char>(letter));
  }
  return safe;
}

class Statements {
public:
  Statements(const std::vector<procedure::Procedure>& tests, std::string home, For whom)
      : tests_(tests), home_(std::move(home)), whom_(whom) {}

  void sitting(const records::SittingRow& row, const std::vector<records::ReadingRow>& readings) {
    for (const auto& reading : readings) {
      if (const auto* test = find(reading.item)) {
        answered(row, reading, *test);
      }
    }
    json completed = statement(row, "completed");
    completed["result"] = {{"completion", true}};
    all_.push_back(std::move(completed));
    if (whom_ == For::Teacher) {
      json judged = statement(row, row.standing.passed ? "passed" : "failed");
      judged["result"] = {{"success", row.standing.passed}, {"score", score(row.standing.mean)}};
      all_.push_back(std::move(judged));
    }
  }

  [[nodiscard]] std::string text() const {
    return all_.dump(1, ' ', false, json::error_handler_t::replace) + '\n';
  }

private:
  const procedure::Procedure* find(const std::string& item) const {
    const auto found =
        std::find_if(tests_.begin(), tests_.end(), [&](const auto& test) { return test.item() == item; });
    return found == tests_.end() ? nullptr : &*found;
  }

  static json score(int earned) {
    return {{"scaled", earned / per_mille}, {"raw", earned}, {"min", 0}, {"max", 1000}};
  }

  [[nodiscard]] std::string address(const records::SittingRow& row) const {
    return home_ + "/case/" + in_address(row.exercise);
  }

  /// A statement about the whole case.
  [[nodiscard]] json statement(const records::SittingRow& row, const std::string& verb) const {
    return {
        {"id", uuid_of(fmt::format("{}|{}|{}|{}|{}|{}", home_, row.number, row.pseudonym, row.rubric.hash,
                                   row.scenario_name, verb))},
        {"actor", {{"objectType", "Agent"}, {"account", {{"homePage", home_}, {"name", row.pseudonym}}}}},
        {"verb", {{"id", verbs + verb}, {"display", words(verb)}}},
        {"object",
         {{"objectType", "Activity"},
          {"id", address(row)},
          {"definition", {{"type", std::string(activities) + "simulation"}, {"name", words(row.title)}}}}},
        {"context", {{"platform", "Matula " MATULA_VERSION}, {"language", "en"}}},
        {"timestamp", moment_of(row.received_s)}};
  }

  void answered(const records::SittingRow& row, const records::ReadingRow& reading,
                const procedure::Procedure& test) {
    json one = statement(row, "answered");
    one["id"] = uuid_of(fmt::format("{}|{}", one["id"].get<std::string>(), reading.item));
    json scale = json::array();
    for (std::size_t i = 0; i < test.words.size(); ++i) {
      scale.push_back({{"id", std::to_string(i)}, {"description", words(test.words[i])}});
    }
    one["object"] = {{"objectType", "Activity"},
                     {"id", address(row) + '/' + in_address(reading.item)},
                     {"definition",
                      {{"type", std::string(activities) + "cmi.interaction"},
                       {"name", words(test.title)},
                       {"interactionType", "likert"},
                       {"scale", scale}}}};
    one["context"]["contextActivities"] = {
        {"parent", json::array({json{{"objectType", "Activity"}, {"id", address(row)}}})}};
    json result = json::object();
    if (reading.read) {
      result["response"] = std::to_string(*reading.read);
    }
    if (whom_ == For::Teacher) {
      result["score"] = score(reading.per_mille);
      result["success"] = reading.read == reading.truth;
    }
    if (!result.empty()) {
      one["result"] = std::move(result);
    }
    all_.push_back(std::move(one));
  }

  const std::vector<procedure::Procedure>& tests_;
  std::string home_;
  For whom_;
  json all_ = json::array();
};

} // namespace

std::string statements(records::Store& store, const std::vector<records::SittingRow>& rows,
                       const std::vector<procedure::Procedure>& tests, const std::string& home, For whom) {
  Statements all(tests, home, whom);
  for (const auto& row : rows) {
    all.sitting(row, store.readings(row));
  }
  return all.text();
}

} // namespace matula::exports
