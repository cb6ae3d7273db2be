#include "engine/records/versions.hpp"

#include "engine/records/connection.hpp"
#include "engine/records/writing.hpp"

#include <fmt/format.h>

namespace matula::records {

using soci::into;
using soci::use;

namespace {

/// Scores of sittings that count by themselves, with the text they were marked under: "" for their own.
constexpr const char* scores =
    "FROM score k JOIN sitting t ON t.id = k.sitting JOIN exercise e ON e.id = t.exercise JOIN student s ON "
    "s.id = t.student JOIN rubric r ON r.id = k.rubric JOIN scenario c ON c.id = k.scenario "
    "WHERE t.continued_in IS NULL AND (:exercise = '' OR e.name = :exercise2) AND (:label = '' OR t.label = "
    ":label2) AND (:who = '' OR s.pseudonym = :who2)";
constexpr const char* other_text = "CASE WHEN k.scenario = t.scenario THEN '' ELSE c.hash END";

std::vector<std::pair<long long, long long>> chosen(Connection& connection, const Scope& scope,
                                                    const Version& version) {
  const std::string query = fmt::format(
      "SELECT k.id, t.id {} AND e.name = :case AND r.hash = :rubric AND r.world = :world AND r.program = "
      ":program AND {} = :text AND k.current = 0",
      scores, other_text);
  long long score = 0;
  long long sitting = 0;
  soci::statement each =
      (connection.sql().prepare << query, use(scope.exercise, "exercise"), use(scope.exercise, "exercise2"),
       use(scope.label, "label"), use(scope.label, "label2"), use(scope.pseudonym, "who"),
       use(scope.pseudonym, "who2"), use(version.exercise, "case"), use(version.rubric.hash, "rubric"),
       use(version.rubric.world, "world"), use(version.rubric.program, "program"),
       use(version.scenario_name, "text"), into(score), into(sitting));
  std::vector<std::pair<long long, long long>> all;
  each.execute();
  while (each.fetch()) {
    all.emplace_back(score, sitting);
  }
  return all;
}

} // namespace

std::vector<Version> versions_of(Store& store, const Scope& scope) {
  Connection& connection = store.connection();
  return in_plain_words(connection.address(), [&] {
    const std::string query =
        fmt::format("SELECT e.name, r.hash, r.world, r.program, {0}, min(k.scored_s), count(*), "
                    "sum(k.current), sum(k.passed) {1} GROUP BY e.name, r.hash, r.world, r.program, {0} "
                    "ORDER BY e.name, min(k.id)",
                    other_text, scores);
    Version one;
    long long scored = 0;
    long long sittings = 0;
    long long counting = 0;
    long long passed = 0;
    soci::statement each =
        (connection.sql().prepare << query, use(scope.exercise, "exercise"), use(scope.exercise, "exercise2"),
         use(scope.label, "label"), use(scope.label, "label2"), use(scope.pseudonym, "who"),
         use(scope.pseudonym, "who2"), into(one.exercise), into(one.rubric.hash), into(one.rubric.world),
         into(one.rubric.program), into(one.scenario_name), into(scored), into(sittings), into(counting),
         into(passed));
    std::vector<Version> all;
    each.execute();
    while (each.fetch()) {
      one.scored_s = scored;
      one.sittings = static_cast<int>(sittings);
      one.counting = static_cast<int>(counting);
      one.passed = static_cast<int>(passed);
      all.push_back(one);
    }
    return all;
  });
}

int let_count(Store& store, const Scope& scope, const Version& version) {
  Connection& connection = store.connection();
  return in_plain_words(connection.address(), [&] {
    Transaction all(connection);
    const auto scores_and_sittings = chosen(connection, scope, version);
    for (const auto& [score, sitting] : scores_and_sittings) {
      make_current(connection, sitting, score);
    }
    all.commit();
    return static_cast<int>(scores_and_sittings.size());
  });
}

} // namespace matula::records
