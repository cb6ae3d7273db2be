#include "engine/records/schema.hpp"

#include "engine/records/squeeze.hpp"

#include <array>
#include <fmt/format.h>

namespace matula::records {

namespace {

using Step = std::vector<const char*>;

/// Statements of each step of the schema. A step that was ever shipped is never changed; add another.
const std::array<Step, 3>& steps() {
  static const std::array<Step, 3> all{
      Step{
          "CREATE TABLE word (id {ID}, text TEXT NOT NULL UNIQUE)",
          "CREATE TABLE item (id {ID}, name TEXT NOT NULL UNIQUE, label TEXT NOT NULL)",
          "CREATE TABLE student (id {ID}, pseudonym TEXT NOT NULL UNIQUE)",
          "CREATE TABLE student_name (student BIGINT PRIMARY KEY REFERENCES student ON DELETE CASCADE, "
          "name TEXT NOT NULL)",
          "CREATE TABLE exercise (id {ID}, name TEXT NOT NULL UNIQUE)",
          "CREATE TABLE scenario (id {ID}, hash TEXT NOT NULL UNIQUE, title TEXT NOT NULL, file TEXT NOT "
          "NULL, "
          "text {BYTES} NOT NULL)",
          "CREATE TABLE rubric (id {ID}, hash TEXT NOT NULL, world TEXT NOT NULL, program TEXT NOT NULL, "
          "UNIQUE (hash, world, program))",
          "CREATE TABLE sitting (id {ID}, student BIGINT NOT NULL REFERENCES student ON DELETE CASCADE, "
          "exercise BIGINT NOT NULL REFERENCES exercise, scenario BIGINT NOT NULL REFERENCES scenario, "
          "log_hash TEXT NOT NULL, label TEXT NOT NULL, received_s BIGINT NOT NULL, keep_until TEXT NOT "
          "NULL, "
          "program TEXT NOT NULL, handed_in SMALLINT NOT NULL, cut_off SMALLINT NOT NULL, checks TEXT NOT "
          "NULL, "
          "continued_in BIGINT, log {BYTES} NOT NULL, UNIQUE (student, exercise, log_hash))",
          "CREATE TABLE score (id {ID}, sitting BIGINT NOT NULL REFERENCES sitting ON DELETE CASCADE, "
          "rubric BIGINT NOT NULL REFERENCES rubric, scenario BIGINT NOT NULL REFERENCES scenario, "
          "scored_s BIGINT NOT NULL, current SMALLINT NOT NULL, student BIGINT NOT NULL, "
          "exercise BIGINT NOT NULL, readings INT NOT NULL, mean INT NOT NULL, best_constant INT NOT NULL, "
          "skill INT, exact INT NOT NULL, within_one INT NOT NULL, missed INT NOT NULL, "
          "false_alarms INT NOT NULL, passed SMALLINT NOT NULL, safety_stop SMALLINT NOT NULL, "
          "why TEXT NOT NULL, ledgers TEXT NOT NULL, UNIQUE (sitting, rubric, scenario))",
          "CREATE TABLE mark (score BIGINT NOT NULL REFERENCES score ON DELETE CASCADE, n SMALLINT NOT NULL, "
          "item BIGINT NOT NULL, ledger SMALLINT NOT NULL, earned SMALLINT NOT NULL, "
          "possible SMALLINT NOT NULL, root BIGINT, entered BIGINT NOT NULL, expected BIGINT NOT NULL, "
          "PRIMARY KEY (score, n)) {ROWS}",
          "CREATE TABLE reading (score BIGINT NOT NULL REFERENCES score ON DELETE CASCADE, "
          "item BIGINT NOT NULL, student BIGINT NOT NULL, current SMALLINT NOT NULL, truth SMALLINT NOT "
          "NULL, "
          "read SMALLINT, intensity INT NOT NULL, per_mille SMALLINT NOT NULL, flags SMALLINT NOT NULL, "
          "PRIMARY KEY (score, item)) {ROWS}",
          "CREATE TABLE loss (score BIGINT NOT NULL REFERENCES score ON DELETE CASCADE, root BIGINT NOT "
          "NULL, "
          "student BIGINT NOT NULL, current SMALLINT NOT NULL, lost INT NOT NULL, "
          "PRIMARY KEY (score, root)) {ROWS}",
      },
      Step{
          "CREATE INDEX reading_view ON reading (current, item, student, truth, read, flags)",
          "CREATE INDEX loss_view ON loss (current, root, student, lost)",
          "CREATE INDEX sitting_exercise ON sitting (exercise, label)",
          "CREATE INDEX sitting_log ON sitting (log_hash)",
          "CREATE INDEX score_student ON score (current, student)",
      },
      Step{
          "CREATE INDEX reading_latest ON reading (current, item, score, student, intensity, read)",
      }};
  return all;
}

int version_of(Connection& connection) {
  const bool there =
      connection.on_server()
          ? connection.number("SELECT count(*) FROM information_schema.tables WHERE table_name "
                              "= 'meta' AND table_schema = current_schema()") == 1
          : connection.number("SELECT count(*) FROM sqlite_master WHERE name = 'meta'") == 1;
  if (!there) {
    return 0;
  }
  const std::string written = connection.text("SELECT value FROM meta WHERE name = 'schema'");
  return written.empty() ? 0 : std::stoi(written);
}

void begin_meta(Connection& connection) {
  connection.run("CREATE TABLE meta (name TEXT PRIMARY KEY, value TEXT NOT NULL)");
  const std::string book = shipped_codebook(); // The statement runs when nothing temporary lives any more.
  connection.sql() << "INSERT INTO meta VALUES ('codebook', :book)", soci::use(book, "book");
  connection.run("INSERT INTO meta VALUES ('schema', '0')");
}

} // namespace

int newest_schema() {
  return static_cast<int>(steps().size());
}

void migrate(Connection& connection, int to) {
  int at = version_of(connection);
  if (at > newest_schema()) {
    throw Trouble(
        fmt::format("{} was written by a newer version of this program (its tables are version {}, this "
                    "program knows {}). It was left as it is; use the newer program.",
                    connection.address(), at, newest_schema()));
  }
  while (at < to) {
    Transaction change(connection);
    at = version_of(connection); // Another program may have done it meanwhile.
    if (at >= to) {
      return;
    }
    if (at == 0) {
      begin_meta(connection);
    }
    for (const char* statement : steps()[static_cast<std::size_t>(at)]) {
      connection.run(statement);
    }
    ++at;
    connection.run(fmt::format("UPDATE meta SET value = '{}' WHERE name = 'schema'", at));
    change.commit();
  }
}

} // namespace matula::records
