#include "engine/records/writing.hpp"

#include "engine/records/squeeze.hpp"
#include "engine/scoring/standards.hpp"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <fmt/ranges.h>

namespace matula::records {

using soci::into;
using soci::use;

namespace {

constexpr double thousandths = 1000;

constexpr long long missed = 1;
constexpr long long false_alarm = 2;
constexpr long long concluded = 4;
constexpr long long concluded_right = 8;

std::string ledgers_of(const scoring::Report& report) {
  std::vector<std::string> parts;
  for (const auto ledger : scoring::all_ledgers) {
    if (report.possible(ledger) > 0) {
      parts.push_back(
          fmt::format("{} {}/{}", scoring::to_word(ledger), report.earned(ledger), report.possible(ledger)));
    }
  }
  return fmt::format("{}", fmt::join(parts, ", "));
}

long long flags_of(const scoring::Mark& mark, const scoring::Report& report) {
  long long flags = (mark.graded->missed_finding ? missed : 0) | (mark.graded->false_alarm ? false_alarm : 0);
  for (const auto& finding : report.findings) {
    if (finding.label == mark.label) {
      flags |= concluded | (finding.interpreted_right ? concluded_right : 0);
    }
  }
  return flags;
}

} // namespace

long long Writer::once(const std::string& table, const std::string& column, const std::string& text) {
  const std::string key = table + '\n' + text;
  if (const auto found = known_.find(key); found != known_.end()) {
    return found->second;
  }
  long long id = 0;
  const std::string find = "SELECT id FROM " + table + " WHERE " + column + " = :text";
  connection_.sql() << find, use(text, "text"), into(id);
  if (!connection_.sql().got_data()) {
    connection_.sql() << "INSERT INTO " + table + " (" + column + ") VALUES (:text) ON CONFLICT DO NOTHING",
        use(text, "text");
    connection_.sql() << find, use(text, "text"), into(id);
  }
  known_[key] = id;
  return id;
}

long long Writer::word(const std::string& text) {
  constexpr std::size_t longest = 300; // Of what somebody wrote on a worksheet.
  return once("word", "text", text.substr(0, longest));
}

long long Writer::item(const std::string& name, const std::string& label) {
  const std::string key = "item\n" + name;
  if (const auto found = known_.find(key); found != known_.end()) {
    return found->second;
  }
  connection_.sql() << "INSERT INTO item (name, label) VALUES (:name, :label) ON CONFLICT DO NOTHING",
      use(name, "name"), use(label, "label");
  return once("item", "name", name);
}

long long Writer::scenario(const Marked& marked) {
  long long id = 0;
  const std::string find = "SELECT id FROM scenario WHERE hash = :hash";
  connection_.sql() << find, use(marked.scenario_name, "hash"), into(id);
  if (!connection_.sql().got_data()) {
    connection_.sql() << "INSERT INTO scenario (hash, title, file, text) VALUES (:hash, :title, :file, " +
                             connection_.bytes(squeeze(marked.incoming.scenario_text, codebook_)) +
                             ") ON CONFLICT DO NOTHING",
        use(marked.scenario_name, "hash"), use(marked.scenario_title, "title"),
        use(marked.incoming.scenario_file, "file");
    connection_.sql() << find, use(marked.scenario_name, "hash"), into(id);
  }
  return id;
}

long long Writer::rubric(const Rubric& rubric) {
  long long id = 0;
  const std::string find =
      "SELECT id FROM rubric WHERE hash = :hash AND world = :world AND program = :program";
  connection_.sql() << find, use(rubric.hash, "hash"), use(rubric.world, "world"),
      use(rubric.program, "program"), into(id);
  if (!connection_.sql().got_data()) {
    connection_.sql() << "INSERT INTO rubric (hash, world, program) VALUES (:hash, :world, :program) ON "
                         "CONFLICT DO NOTHING",
        use(rubric.hash, "hash"), use(rubric.world, "world"), use(rubric.program, "program");
    connection_.sql() << find, use(rubric.hash, "hash"), use(rubric.world, "world"),
        use(rubric.program, "program"), into(id);
  }
  return id;
}

/// Looks for a stored log of the same student that this one goes on from, or that goes on from this one.
/// Gives the number of the former.
long long Writer::earlier_part(long long student, long long exercise, const Marked& marked, Stored& stored) {
  std::vector<std::pair<long long, std::string>> others;
  {
    long long id = 0;
    std::string hex;
    soci::statement each =
        (connection_.sql().prepare << "SELECT id, " + connection_.hex_of("log") +
                                          " FROM sitting WHERE student = :student AND exercise = :exercise "
                                          "AND continued_in IS NULL ORDER BY id",
         use(student, "student"), use(exercise, "exercise"), into(id), into(hex));
    each.execute();
    while (each.fetch()) {
      others.emplace_back(id, hex);
    }
  }
  const std::string& log = marked.incoming.log_text;
  const auto whole = log.find_last_of('\n') + 1; // A line that was cut short may have been written anew.
  for (const auto& [id, hex] : others) {
    const std::string other = unsqueeze(from_hex(hex), codebook_);
    const auto other_whole = other.find_last_of('\n') + 1;
    if (other_whole >= whole && other.compare(0, whole, log, 0, whole) == 0) {
      stored.how = Stored::How::Earlier;
      stored.number = id;
      return 0;
    }
    if (log.compare(0, other_whole, other, 0, other_whole) == 0) {
      return id;
    }
  }
  return 0;
}

Stored Writer::add(const Marked& marked, std::int64_t now_s) {
  Stored stored;
  const Incoming& in = marked.incoming;
  const long long student = once("student", "pseudonym", in.pseudonym);
  const long long exercise = once("exercise", "name", in.exercise);
  connection_.sql()
      << "SELECT id FROM sitting WHERE student = :student AND exercise = :exercise AND log_hash = :log",
      use(student, "student"), use(exercise, "exercise"), use(marked.log_name, "log"), into(stored.number);
  if (connection_.sql().got_data()) {
    stored.how = Stored::How::Known;
    return stored;
  }
  const long long before = earlier_part(student, exercise, marked, stored);
  if (stored.how == Stored::How::Earlier) {
    return stored;
  }
  connection_.sql() << "SELECT s.pseudonym FROM sitting JOIN student s ON s.id = sitting.student WHERE "
                       "log_hash = :log ORDER BY sitting.id LIMIT 1",
      use(marked.log_name, "log"), into(stored.same_log_as);
  const long long scenario_id = scenario(marked);
  const int handed_in = marked.handed_in ? 1 : 0;
  const int cut_off = marked.cut_off ? 1 : 0;
  const long long now = now_s;
  connection_.sql() << "INSERT INTO sitting (student, exercise, scenario, log_hash, label, received_s, "
                       "keep_until, program, handed_in, cut_off, checks, log) VALUES (:student, :exercise, "
                       ":scenario, :log, :label, :received, :keep, :program, :handed, :cut, :checks, " +
                           connection_.bytes(squeeze(in.log_text, codebook_)) + ") RETURNING id",
      use(student, "student"), use(exercise, "exercise"), use(scenario_id, "scenario"),
      use(marked.log_name, "log"), use(in.label, "label"), use(now, "received"), use(in.keep_until, "keep"),
      use(marked.begun_with, "program"), use(handed_in, "handed"), use(cut_off, "cut"),
      use(in.checks, "checks"), into(stored.number);
  add_score(stored.number, marked, now_s);
  if (before != 0) {
    stored.how = Stored::How::Goes_on;
    connection_.run(fmt::format("UPDATE sitting SET continued_in = {} WHERE id = {}", stored.number, before));
    make_current(connection_, before, 0);
  }
  return stored;
}

bool Writer::add_score(long long sitting, const Marked& marked, std::int64_t now_s) {
  const long long rubric_id = rubric(marked.rubric);
  const long long scenario_id = scenario(marked);
  if (const Cell there = connection_.number(
          fmt::format("SELECT id FROM score WHERE sitting = {} AND rubric = {} AND scenario = {}", sitting,
                      rubric_id, scenario_id))) {
    make_current(connection_, sitting, *there);
    return false;
  }
  const long long student =
      connection_.number(fmt::format("SELECT student FROM sitting WHERE id = {}", sitting)).value_or(0);
  const long long exercise =
      connection_.number(fmt::format("SELECT exercise FROM sitting WHERE id = {}", sitting)).value_or(0);
  const auto& standing = marked.report.standing;
  const std::string why = fmt::format("{}", fmt::join(standing.not_passed_because, "; "));
  const std::string ledgers = ledgers_of(marked.report);
  long long score = 0;
  connection_.sql() << fmt::format(
      "INSERT INTO score (sitting, rubric, scenario, scored_s, current, student, exercise, readings, mean, "
      "best_constant, skill, exact, within_one, missed, false_alarms, passed, safety_stop, why, ledgers) "
      "VALUES ({}, {}, {}, {}, 1, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, :why, :ledgers) RETURNING "
      "id",
      sitting, rubric_id, scenario_id, now_s, student, exercise, standing.readings, standing.mean,
      standing.best_constant, standing.skill ? std::to_string(*standing.skill) : "NULL", standing.exact,
      standing.within_one, standing.missed_findings, standing.false_alarms, standing.passed ? 1 : 0,
      marked.report.safety_stop ? 1 : 0),
      use(why, "why"), use(ledgers, "ledgers"), into(score);
  rows_of(score, student, marked.report);
  make_current(connection_, sitting, score);
  return true;
}

void Writer::rows_of(long long score, long long student, const scoring::Report& report) {
  std::vector<std::vector<Cell>> marks;
  std::vector<std::vector<Cell>> readings;
  for (const auto& mark : report.marks) { // First, so that faults are called by their own labels.
    item(mark.item, mark.label);
  }
  for (const auto& mark : report.marks) {
    if (mark.possible == 0) {
      continue; // A note: it comes back with a replay.
    }
    const long long name = item(mark.item, mark.label);
    const Cell root = mark.root.empty() ? Cell() : Cell(item(mark.root, mark.root_words));
    marks.push_back({score, static_cast<long long>(marks.size()), name, static_cast<long long>(mark.ledger),
                     mark.earned, mark.possible, root, word(mark.entered), word(mark.expected)});
    if (mark.graded) {
      const auto& graded = *mark.graded;
      readings.push_back({score, name, student, 1, graded.truth, graded.read ? Cell(*graded.read) : Cell(),
                          std::llround(graded.intensity * thousandths), graded.per_mille,
                          flags_of(mark, report)});
    }
  }
  std::vector<std::vector<Cell>> losses;
  for (const auto& loss : report.losses) {
    losses.push_back({score, item(loss.root, loss.words), student, 1, loss.lost});
  }
  connection_.insert("mark", marks);
  connection_.insert("reading", readings);
  connection_.insert("loss", losses);
}

void make_current(Connection& connection, long long sitting, long long score) {
  connection.run(fmt::format("UPDATE score SET current = CASE WHEN id = {} THEN 1 ELSE 0 END WHERE sitting "
                             "= {} AND current <> CASE WHEN id = {} THEN 1 ELSE 0 END",
                             score, sitting, score));
  for (const char* table : {"reading", "loss"}) {
    connection.run(fmt::format(
        "UPDATE {0} SET current = CASE WHEN score = {1} THEN 1 ELSE 0 END WHERE score IN (SELECT id FROM "
        "score WHERE sitting = {2}) AND current <> CASE WHEN score = {1} THEN 1 ELSE 0 END",
        table, score, sitting));
  }
}

} // namespace matula::records
