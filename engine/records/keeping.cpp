// Names, deletion and copies.
#include "engine/records/connection.hpp"
#include "engine/records/store.hpp"

#include <filesystem>
#include <fmt/format.h>

namespace matula::records {

using soci::into;
using soci::use;

namespace {

int affected(Connection& connection, const std::string& statement) {
  soci::statement one = (connection.sql().prepare << statement);
  one.execute(true);
  return static_cast<int>(one.get_affected_rows());
}

int count(Connection& connection, const std::string& query) {
  return static_cast<int>(connection.number(query).value_or(0));
}

/// Removes the sittings that `where` chooses, and every row that hangs on them.
void remove_sittings(Connection& connection, const std::string& where, Removed& removed) {
  const std::string sittings = "(SELECT id FROM sitting WHERE " + where + ")";
  const std::string scores = "(SELECT id FROM score WHERE sitting IN " + sittings + ")";
  removed.marks += affected(connection, "DELETE FROM mark WHERE score IN " + scores);
  removed.readings += affected(connection, "DELETE FROM reading WHERE score IN " + scores);
  affected(connection, "DELETE FROM loss WHERE score IN " + scores);
  removed.scores += affected(connection, "DELETE FROM score WHERE sitting IN " + sittings);
  // A part whose end is removed counts no more by itself; its number would point nowhere.
  affected(connection, "UPDATE sitting SET continued_in = NULL WHERE continued_in IN " + sittings);
  removed.sittings += affected(connection, "DELETE FROM sitting WHERE " + where);
}

/// Words that only removed sittings had written, and scenarios nobody sat.
void remove_unused(Connection& connection, Removed& removed) {
  removed.words +=
      affected(connection,
               "DELETE FROM word WHERE id NOT IN (SELECT entered FROM mark UNION SELECT expected FROM mark)");
  removed.scenarios += affected(
      connection,
      "DELETE FROM scenario WHERE id NOT IN (SELECT scenario FROM sitting UNION SELECT scenario FROM score)");
}

/// Pages are written anew and the file's journal is emptied, so that nothing removed is left beside what
/// stays.
void clean_file(Connection& connection) {
  bool clean = true;
  try {
    if (connection.on_server()) {
      for (const char* table :
           {"student_name", "student", "sitting", "score", "mark", "reading", "loss", "word", "scenario"}) {
        connection.run(std::string("VACUUM FULL ") + table);
      }
      return;
    }
    connection.run("VACUUM");
    clean = connection.number("PRAGMA wal_checkpoint(TRUNCATE)") == 0; // Its first number says "busy".
  } catch (const soci::soci_error&) {
    clean = false;
  }
  if (!clean) {
    throw Trouble(
        "It was removed and will not be seen again, but " + connection.address() +
        " could not be written anew because another program is looking at it: traces may be left in its "
        "free space. Close that program and run \"matula class expire\", which does it.");
  }
}

} // namespace

void Store::set_names(const std::vector<std::pair<std::string, std::string>>& named) {
  in_plain_words(connection_->address(), [&] {
    Transaction all(*connection_);
    auto& sql = connection_->sql();
    for (const auto& [pseudonym, name] : named) {
      sql << "INSERT INTO student (pseudonym) VALUES (:who) ON CONFLICT DO NOTHING", use(pseudonym, "who");
      sql << "DELETE FROM student_name WHERE student = (SELECT id FROM student WHERE pseudonym = :who)",
          use(pseudonym, "who");
      if (!name.empty()) {
        sql << "INSERT INTO student_name (student, name) SELECT id, :name FROM student WHERE pseudonym = "
               ":who",
            use(name, "name"), use(pseudonym, "who");
      }
    }
    all.commit();
  });
}

std::map<std::string, std::string> Store::names() {
  return in_plain_words(
      connection_->address(), [&] {
        std::string pseudonym;
        std::string name;
        soci::statement each =
            (connection_->sql().prepare
                 << "SELECT s.pseudonym, n.name FROM student_name n JOIN student s ON s.id = n.student",
             into(pseudonym), into(name));
        std::map<std::string, std::string> all;
        each.execute();
        while (each.fetch()) {
          all[pseudonym] = name;
        }
        return all;
      });
}

namespace {

Removed remove_student(Connection& connection, const std::string& pseudonym) {
  Removed removed;
  long long student = 0;
  connection.sql() << "SELECT id FROM student WHERE pseudonym = :who", use(pseudonym, "who"), into(student);
  if (!connection.sql().got_data()) {
    throw Trouble("Nobody is called \"" + pseudonym + "\" in " + connection.address() +
                  "; nothing was removed.");
  }
  remove_sittings(connection, fmt::format("student = {}", student), removed);
  removed.names = affected(connection, fmt::format("DELETE FROM student_name WHERE student = {}", student));
  removed.students = affected(connection, fmt::format("DELETE FROM student WHERE id = {}", student));
  remove_unused(connection, removed);
  return removed;
}

Removed remove_past(Connection& connection, const std::string& today) {
  Removed removed;
  if (today.find_first_not_of("0123456789-") != std::string::npos || today.size() != 10) {
    throw Trouble("\"" + today + "\" is no day; write it as 2027-09-30.");
  }
  const std::string past = "keep_until <> '' AND keep_until < '" + today + "'";
  const std::string gone = "id IN (SELECT student FROM sitting WHERE " + past +
                           ") AND id NOT IN (SELECT student FROM sitting WHERE NOT (" + past + "))";
  removed.names =
      count(connection,
            "SELECT count(*) FROM student_name WHERE student IN (SELECT id FROM student WHERE " + gone + ")");
  affected(connection,
           "DELETE FROM student_name WHERE student IN (SELECT id FROM student WHERE " + gone + ")");
  const std::string left = "NOT EXISTS (SELECT 1 FROM sitting WHERE sitting.student = student.id) AND "
                           "NOT EXISTS (SELECT 1 FROM student_name n WHERE n.student = student.id)";
  const int empty_before = count(connection, "SELECT count(*) FROM student WHERE " + left);
  remove_sittings(connection, past, removed);
  removed.students = affected(connection, "DELETE FROM student WHERE " + left);
  removed.students -= empty_before;
  remove_unused(connection, removed);
  return removed;
}

/// Removes and cleans the file; or with `look`, only counts what would be removed and takes it back.
template <class Remove> Removed removed_by(Connection& connection, bool look, Remove remove) {
  return in_plain_words(connection.address(), [&] {
    Removed removed;
    {
      Transaction all(connection);
      removed = remove();
      if (look) {
        return removed;
      }
      all.commit();
    }
    clean_file(connection);
    return removed;
  });
}

} // namespace

Removed Store::forget(const std::string& pseudonym) {
  return removed_by(*connection_, false, [&] { return remove_student(*connection_, pseudonym); });
}

Removed Store::would_forget(const std::string& pseudonym) {
  return removed_by(*connection_, true, [&] { return remove_student(*connection_, pseudonym); });
}

Removed Store::forget_until(const std::string& today) {
  return removed_by(*connection_, false, [&] { return remove_past(*connection_, today); });
}

Removed Store::would_forget_until(const std::string& today) {
  return removed_by(*connection_, true, [&] { return remove_past(*connection_, today); });
}

std::vector<std::string> Store::find_damage() {
  return in_plain_words(connection_->address(), [&] {
    std::vector<std::string> wrong;
    if (!connection_->on_server()) {
      std::string line;
      soci::statement each = (connection_->sql().prepare << "PRAGMA integrity_check(20)", into(line));
      each.execute();
      while (each.fetch()) {
        if (line != "ok") {
          wrong.push_back(line);
        }
      }
    }
    const auto none = [&](const char* query, const char* words) {
      if (const int found = count(*connection_, query); found > 0) {
        wrong.push_back(fmt::format("{} {}", found, words));
      }
    };
    none("SELECT count(*) FROM sitting WHERE student NOT IN (SELECT id FROM student) OR exercise NOT IN "
         "(SELECT "
         "id FROM exercise) OR scenario NOT IN (SELECT id FROM scenario)",
         "sitting(s) without their student, case or scenario");
    none("SELECT count(*) FROM score WHERE sitting NOT IN (SELECT id FROM sitting)",
         "score(s) of no sitting");
    none("SELECT count(*) FROM sitting WHERE id NOT IN (SELECT sitting FROM score)",
         "sitting(s) without a score");
    none("SELECT count(*) FROM sitting t WHERE continued_in IS NULL AND NOT EXISTS (SELECT 1 FROM score k "
         "WHERE "
         "k.sitting = t.id AND k.current = 1)",
         "sitting(s) none of whose scores counts");
    none("SELECT count(*) FROM mark WHERE score NOT IN (SELECT id FROM score)", "mark(s) of no score");
    none("SELECT count(*) FROM reading WHERE score NOT IN (SELECT id FROM score)", "reading(s) of no score");
    none("SELECT count(*) FROM score WHERE id NOT IN (SELECT score FROM mark)", "score(s) without marks");
    return wrong;
  });
}

void Store::back_up(const std::string& file) {
  if (connection_->on_server()) {
    throw Trouble(
        "A server's database is copied with the server's own tools (pg_dump), which see all of it.");
  }
  std::error_code ignored;
  if (std::filesystem::exists(file, ignored)) {
    throw Trouble(file + " is there already; a backup is never written over anything. Choose another name.");
  }
  in_plain_words(file, [&] { connection_->sql() << "VACUUM INTO :file", use(file, "file"); });
}

} // namespace matula::records
