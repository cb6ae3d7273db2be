#include "engine/records/store.hpp"

#include "engine/records/review.hpp"
#include "engine/records/schema.hpp"
#include "engine/records/squeeze.hpp"
#include "engine/records/writing.hpp"

#include <fmt/format.h>

namespace matula::records {

using soci::into;
using soci::use;

namespace {

constexpr double thousandths = 1000;

/// One row of the list as the database gives it.
struct Raw {
  SittingRow row;
  long long received = 0;
  long long scored = 0;
  long long handed_in = 0;
  long long passed = 0;
  long long stop = 0;
  long long skill = 0;
  soci::indicator has_skill = soci::i_null;

  [[nodiscard]] SittingRow made() const {
    SittingRow made = row;
    made.received_s = received;
    made.scored_s = scored;
    made.handed_in = handed_in != 0;
    made.standing.passed = passed != 0;
    made.safety_stop = stop != 0;
    if (has_skill == soci::i_ok) {
      made.standing.skill = static_cast<int>(skill);
    }
    return made;
  }
};

constexpr const char* list_columns =
    "SELECT t.id, s.pseudonym, e.name, c.title, t.label, t.received_s, t.keep_until, t.handed_in, "
    "COALESCE(t.continued_in, 0), t.checks, r.hash, r.world, r.program, c.hash, k.scored_s, k.readings, "
    "k.mean, "
    "k.best_constant, k.skill, k.exact, k.within_one, k.missed, k.false_alarms, k.passed, k.safety_stop, "
    "k.why, "
    "k.ledgers FROM sitting t JOIN score k ON k.sitting = t.id JOIN student s ON s.id = t.student "
    "JOIN exercise e ON e.id = t.exercise JOIN scenario c ON c.id = k.scenario JOIN rubric r ON r.id = "
    "k.rubric ";

} // namespace

Store::Store(const std::string& address) : connection_(std::make_unique<Connection>(address)) {
  in_plain_words(address, [&] {
    migrate(*connection_, newest_schema());
    codebook_ = connection_->text("SELECT value FROM meta WHERE name = 'codebook'");
  });
}

Store::Store(std::unique_ptr<Connection> connection, std::string codebook)
    : connection_(std::move(connection)), codebook_(std::move(codebook)) {}

Store Store::beside() const {
  return {std::make_unique<Connection>(connection_->address(), Connection::Opening::Beside), codebook_};
}

Store::~Store() = default;
Store::Store(Store&&) noexcept = default;
Store& Store::operator=(Store&&) noexcept = default;

std::set<std::array<std::string, 3>> Store::log_names() {
  return in_plain_words(connection_->address(), [&] {
    std::array<std::string, 3> one;
    soci::statement each =
        (connection_->sql().prepare << "SELECT s.pseudonym, e.name, t.log_hash FROM sitting t JOIN student s "
                                       "ON s.id = t.student JOIN exercise e ON e.id = t.exercise",
         into(one[0]), into(one[1]), into(one[2]));
    std::set<std::array<std::string, 3>> all;
    each.execute();
    while (each.fetch()) {
      all.insert(one);
    }
    return all;
  });
}

Stored Store::add(const Marked& marked, std::int64_t now_s) {
  return in_plain_words(connection_->address(), [&] {
    Transaction all(*connection_);
    const Stored stored = Writer(*connection_, codebook_).add(marked, now_s);
    all.commit();
    return stored;
  });
}

void Store::add_all(const std::vector<Marked>& many, std::int64_t now_s) {
  in_plain_words(connection_->address(), [&] {
    Transaction all(*connection_);
    Writer writer(*connection_, codebook_);
    for (const Marked& marked : many) {
      writer.add(marked, now_s);
    }
    all.commit();
  });
}

bool Store::keep_review(const std::string& pseudonym, const std::string& exercise,
                        const std::string& log_name, const std::string& checks) {
  return in_plain_words(connection_->address(), [&] {
    Transaction all(*connection_);
    long long number = 0;
    std::string kept;
    connection_->sql() << "SELECT t.id, t.checks FROM sitting t JOIN student s ON s.id = t.student JOIN "
                          "exercise e ON e.id = t.exercise WHERE s.pseudonym = :who AND e.name = :exercise "
                          "AND t.log_hash = :log",
        use(pseudonym, "who"), use(exercise, "exercise"), use(log_name, "log"), into(number), into(kept);
    if (!connection_->sql().got_data() || why_review(checks).empty() || !why_review(kept).empty()) {
      return false;
    }
    connection_->sql() << "UPDATE sitting SET checks = :checks WHERE id = :number", use(checks, "checks"),
        use(number, "number");
    all.commit();
    return true;
  });
}

bool Store::add_score(long long number, const Marked& marked, std::int64_t now_s) {
  return in_plain_words(connection_->address(), [&] {
    Transaction all(*connection_);
    const bool is_new = Writer(*connection_, codebook_).add_score(number, marked, now_s);
    all.commit();
    return is_new;
  });
}

void Store::try_score(long long number, const Marked& marked, std::int64_t now_s,
                      const std::function<void()>& look) {
  in_plain_words(connection_->address(), [&] {
    const Transaction trial(*connection_); // Never committed.
    Writer(*connection_, codebook_).add_score(number, marked, now_s);
    look();
  });
}

std::int64_t Store::latest_s() {
  return in_plain_words(connection_->address(), [&] {
    return static_cast<std::int64_t>(connection_->number("SELECT max(received_s) FROM sitting").value_or(0));
  });
}

std::vector<SittingRow> Store::sittings(const Scope& scope, bool all_scores) {
  return in_plain_words(connection_->address(), [&] {
    Raw raw;
    SittingRow& row = raw.row;
    auto& standing = row.standing;
    const std::string query =
        std::string(list_columns) +
        "WHERE (:exercise = '' OR e.name = :exercise2) AND (:label = '' OR t.label = :label2) AND "
        "(:who = '' OR s.pseudonym = :who2)" +
        (all_scores ? "" : " AND k.current = 1") + " ORDER BY t.id, k.id";
    soci::statement each =
        (connection_->sql().prepare << query, use(scope.exercise, "exercise"),
         use(scope.exercise, "exercise2"), use(scope.label, "label"), use(scope.label, "label2"),
         use(scope.pseudonym, "who"), use(scope.pseudonym, "who2"), into(row.number), into(row.pseudonym),
         into(row.exercise), into(row.title), into(row.label), into(raw.received), into(row.keep_until),
         into(raw.handed_in), into(row.continued_in), into(row.checks), into(row.rubric.hash),
         into(row.rubric.world), into(row.rubric.program), into(row.scenario_name), into(raw.scored),
         into(standing.readings), into(standing.mean), into(standing.best_constant),
         into(raw.skill, raw.has_skill), into(standing.exact), into(standing.within_one),
         into(standing.missed_findings), into(standing.false_alarms), into(raw.passed), into(raw.stop),
         into(row.why_not), into(row.ledgers));
    std::vector<SittingRow> all;
    each.execute();
    while (each.fetch()) {
      all.push_back(raw.made());
    }
    return all;
  });
}

namespace {

/// The score a row of the list speaks of.
long long score_of(Connection& connection, const SittingRow& row) {
  long long id = 0;
  connection.sql() << "SELECT k.id FROM score k JOIN rubric r ON r.id = k.rubric JOIN scenario c ON c.id = "
                      "k.scenario WHERE k.sitting = :number AND r.hash = :rubric AND r.world = :world AND "
                      "r.program = :program AND c.hash = :scenario",
      use(row.number, "number"), use(row.rubric.hash, "rubric"), use(row.rubric.world, "world"),
      use(row.rubric.program, "program"), use(row.scenario_name, "scenario"), into(id);
  if (!connection.sql().got_data()) {
    throw Trouble(fmt::format("There is no such score of sitting {} any more.", row.number));
  }
  return id;
}

} // namespace

std::vector<MarkRow> Store::marks(const SittingRow& score) {
  return in_plain_words(connection_->address(), [&] {
    const long long id = score_of(*connection_, score);
    MarkRow row;
    int ledger = 0;
    soci::statement each =
        (connection_->sql().prepare << "SELECT m.ledger, i.name, i.label, m.earned, m.possible, "
                                       "COALESCE(r.name, ''), a.text, b.text FROM mark m "
                                       "JOIN item i ON i.id = m.item LEFT JOIN item r ON r.id = m.root JOIN "
                                       "word a ON a.id = m.entered "
                                       "JOIN word b ON b.id = m.expected WHERE m.score = :id ORDER BY m.n",
         use(id, "id"), into(ledger), into(row.item), into(row.label), into(row.earned), into(row.possible),
         into(row.root), into(row.entered), into(row.expected));
    std::vector<MarkRow> all;
    each.execute();
    while (each.fetch()) {
      row.ledger = static_cast<scoring::Ledger>(ledger);
      all.push_back(row);
    }
    return all;
  });
}

std::vector<ReadingRow> Store::readings(const SittingRow& score) {
  return in_plain_words(connection_->address(), [&] {
    const long long id = score_of(*connection_, score);
    ReadingRow row;
    int read = 0;
    int intensity = 0;
    int flags = 0;
    soci::indicator was_read = soci::i_null;
    soci::statement each =
        (connection_->sql().prepare << "SELECT i.name, g.truth, g.read, g.intensity, g.per_mille, g.flags "
                                       "FROM reading g JOIN item i "
                                       "ON i.id = g.item WHERE g.score = :id ORDER BY i.name",
         use(id, "id"), into(row.item), into(row.truth), into(read, was_read), into(intensity),
         into(row.per_mille), into(flags));
    std::vector<ReadingRow> all;
    each.execute();
    while (each.fetch()) {
      row.read = was_read == soci::i_ok ? std::optional<int>(read) : std::nullopt;
      row.intensity = intensity / thousandths;
      row.missed_finding = (flags & 1) != 0;
      row.false_alarm = (flags & 2) != 0;
      row.interpreted_right = (flags & 4) != 0 ? std::optional<bool>((flags & 8) != 0) : std::nullopt;
      all.push_back(row);
    }
    return all;
  });
}

Incoming Store::original(long long number) {
  return in_plain_words(connection_->address(), [&] {
    Incoming in;
    std::string log;
    std::string scenario;
    connection_->sql()
        << "SELECT s.pseudonym, e.name, c.file, t.checks, t.label, t.keep_until, " +
               connection_->hex_of("t.log") + ", " + connection_->hex_of("c.text") +
               " FROM sitting t JOIN student s ON s.id = t.student JOIN exercise e ON e.id = t.exercise "
               "JOIN scenario c ON c.id = t.scenario WHERE t.id = :number",
        use(number, "number"), into(in.pseudonym), into(in.exercise), into(in.scenario_file), into(in.checks),
        into(in.label), into(in.keep_until), into(log), into(scenario);
    if (!connection_->sql().got_data()) {
      throw Trouble(fmt::format("There is no sitting {} in {}.", number, connection_->address()));
    }
    in.log_text = unsqueeze(from_hex(log), codebook_);
    in.scenario_text = unsqueeze(from_hex(scenario), codebook_);
    in.came_from = fmt::format("sitting {}", number);
    return in;
  });
}

std::string Store::scenario_text(const std::string& name) {
  return in_plain_words(connection_->address(), [&] {
    std::string text;
    connection_->sql() << "SELECT " + connection_->hex_of("text") + " FROM scenario WHERE hash = :name",
        use(name, "name"), into(text);
    if (!connection_->sql().got_data()) {
      throw Trouble("There is no such scenario in " + connection_->address() + ".");
    }
    return unsqueeze(from_hex(text), codebook_);
  });
}

} // namespace matula::records
