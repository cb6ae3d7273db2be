#include "engine/records/review.hpp"

#include "engine/records/connection.hpp"

#include <nlohmann/json.hpp>

namespace matula::records {

using soci::into;
using soci::use;

namespace {

constexpr const char* review_state = "to be reviewed";

std::string text_at(const nlohmann::json& object, const char* key) {
  const auto found = object.find(key);
  return found != object.end() && found->is_string() ? found->get<std::string>() : std::string();
}

} // namespace

std::vector<CheckFound> checks_of(const std::string& checks) {
  const auto all = nlohmann::json::parse(checks, nullptr, false);
  std::vector<CheckFound> found;
  if (!all.is_object() || !all.contains("checks") || !all["checks"].is_array()) {
    return found;
  }
  for (const auto& one : all["checks"]) {
    if (one.is_object()) {
      found.push_back({text_at(one, "check"), text_at(one, "state"), text_at(one, "words")});
    }
  }
  return found;
}

std::vector<std::string> why_review(const std::string& checks) {
  std::vector<std::string> why;
  for (const auto& one : checks_of(checks)) {
    if (one.state == review_state) {
      why.push_back(one.what + ": " + one.words);
    }
  }
  return why;
}

std::string what_to_review(const std::string& checks) {
  std::string names;
  for (const auto& one : checks_of(checks)) {
    if (one.state == review_state) {
      names += (names.empty() ? "" : ", ") + one.what;
    }
  }
  return names;
}

std::vector<ToReview> to_review(Store& store, const Scope& scope) {
  return in_plain_words(store.connection().address(), [&] {
    const std::string marked = R"(%"to_be_reviewed":true%)";
    ToReview one;
    std::string checks;
    soci::statement each =
        (store.connection().sql().prepare
             << "SELECT t.id, s.pseudonym, e.name, t.checks FROM sitting t JOIN student s ON s.id = "
                "t.student JOIN exercise e ON e.id = t.exercise WHERE t.checks LIKE :marked AND "
                "(:exercise = '' OR e.name = :exercise2) AND (:label = '' OR t.label = :label2) AND "
                "(:who = '' OR s.pseudonym = :who2) ORDER BY t.id",
         use(marked, "marked"), use(scope.exercise, "exercise"), use(scope.exercise, "exercise2"),
         use(scope.label, "label"), use(scope.label, "label2"), use(scope.pseudonym, "who"),
         use(scope.pseudonym, "who2"), into(one.number), into(one.pseudonym), into(one.exercise),
         into(checks));
    std::vector<ToReview> all;
    each.execute();
    while (each.fetch()) {
      one.why = why_review(checks);
      all.push_back(one);
    }
    return all;
  });
}

} // namespace matula::records
