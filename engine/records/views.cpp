#include "engine/records/views.hpp"

#include "engine/records/connection.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::records {

using soci::into;
using soci::use;

namespace {

constexpr double thousandths = 1000;

bool is_all(const Scope& scope) {
  return scope.exercise.empty() && scope.label.empty() && scope.pseudonym.empty();
}

/// The scores that count of what is asked about, as a table "asked" of their numbers. Tables after it are to
/// be joined by CROSS JOIN, which keeps the order: a class is a small part of a store of many years, and what
/// belongs to a score stands together in every table. "<> 0" keeps the database from its index of all that
/// counts.
std::string asked(Store& store, const Scope& scope) {
  auto& sql = store.connection().sql();
  const auto id = [&](const std::string& query, const std::string& text) {
    long long found = -1;
    sql << query, use(text, "text"), into(found);
    return sql.got_data() ? found : -1;
  };
  std::string where;
  if (!scope.exercise.empty()) {
    where +=
        fmt::format(" AND t.exercise = {}", id("SELECT id FROM exercise WHERE name = :text", scope.exercise));
  }
  if (!scope.pseudonym.empty()) {
    where += fmt::format(" AND t.student = {}",
                         id("SELECT id FROM student WHERE pseudonym = :text", scope.pseudonym));
  }
  if (!scope.label.empty()) {
    where += " AND t.label = (SELECT label FROM sitting WHERE id = " +
             std::to_string(id("SELECT min(id) FROM sitting WHERE label = :text HAVING min(id) IS NOT NULL",
                               scope.label)) +
             ")";
  }
  return "(SELECT k.id AS score FROM sitting t CROSS JOIN score k WHERE k.sitting = t.id AND k.current <> 0" +
         where + ") asked";
}

/// The rows of a table that count of what is asked about: all of them, or those of some scores. What belongs
/// to a score that counts does so too; saying it again would lead the database to its largest index.
std::string counting(Store& store, const Scope& scope, const std::string& table, const std::string& key) {
  return is_all(scope) ? table + " WHERE " + table + ".current = 1"
                       : asked(store, scope) + " CROSS JOIN " + table + " WHERE " + table + "." + key +
                             " = asked.score";
}

} // namespace

std::map<long long, std::string> item_names(Store& store) {
  return in_plain_words(store.connection().address(), [&] {
    long long id = 0;
    std::string name;
    soci::statement each =
        (store.connection().sql().prepare << "SELECT id, name FROM item", into(id), into(name));
    std::map<long long, std::string> all;
    each.execute();
    while (each.fetch()) {
      all[id] = name;
    }
    return all;
  });
}

std::vector<PairCount> pair_counts(Store& store, const Scope& scope) {
  return in_plain_words(store.connection().address(), [&] {
    PairCount one;
    int flags = 0;
    // As the index stands: grouping asks for no sorting, and the flags need no sums of their own.
    soci::statement each =
        (store.connection().sql().prepare
             << "SELECT item, student, truth, COALESCE(read, -1), flags & 3, count(*) FROM " +
                    counting(store, scope, "reading", "score") +
                    " GROUP BY item, student, truth, read, flags ORDER BY item, student, truth, read",
         into(one.item), into(one.student), into(one.truth), into(one.read), into(flags), into(one.times));
    std::vector<PairCount> all;
    each.execute();
    while (each.fetch()) {
      const bool same = !all.empty() && all.back().item == one.item && all.back().student == one.student &&
                        all.back().truth == one.truth && all.back().read == one.read;
      PairCount& sum = same
                           ? all.back()
                           : all.emplace_back(PairCount{one.item, one.student, one.truth, one.read, 0, 0, 0});
      sum.times += one.times;
      sum.missed += (flags & 1) != 0 ? one.times : 0;
      sum.false_alarms += (flags & 2) != 0 ? one.times : 0;
    }
    return all;
  });
}

std::vector<FaultCount> fault_counts(Store& store, const Scope& scope) {
  return in_plain_words(store.connection().address(), [&] {
    FaultCount one;
    soci::statement each =
        (store.connection().sql().prepare
             << "SELECT i.name, i.label, f.students, f.times, f.lost FROM (SELECT root, count(*) AS "
                "students, "
                "sum(times) AS times, sum(lost) AS lost FROM (SELECT root, student, count(*) AS times, "
                "sum(lost) AS lost FROM " +
                    counting(store, scope, "loss", "score") +
                    " GROUP BY root, student) by_student GROUP BY root) f JOIN item i ON i.id = f.root ORDER "
                    "BY f.lost "
                    "DESC, i.name",
         into(one.root), into(one.label), into(one.students), into(one.times), into(one.lost));
    std::vector<FaultCount> all;
    each.execute();
    while (each.fetch()) {
      all.push_back(one);
    }
    return all;
  });
}

std::vector<StudentSum> student_sums(Store& store, const Scope& scope) {
  return in_plain_words(store.connection().address(), [&] {
    StudentSum one;
    soci::statement each =
        (store.connection().sql().prepare
             << "SELECT k.student, s.pseudonym, k.sittings, k.passed, k.readings, k.per_mille, k.exact, "
                "k.within_one, k.missed, k.false_alarms, k.stops FROM (SELECT student, count(*) AS sittings, "
                "sum(passed) AS passed, sum(readings) AS readings, sum(mean * readings) AS per_mille, "
                "sum(exact) AS exact, sum(within_one) AS within_one, sum(missed) AS missed, "
                "sum(false_alarms) AS false_alarms, sum(safety_stop) AS stops FROM " +
                    counting(store, scope, "score", "id") +
                    " GROUP BY student) k JOIN student s ON s.id = k.student ORDER BY s.pseudonym",
         into(one.student), into(one.pseudonym), into(one.sittings), into(one.passed), into(one.readings),
         into(one.per_mille), into(one.exact), into(one.within_one), into(one.missed), into(one.false_alarms),
         into(one.stops));
    std::vector<StudentSum> all;
    each.execute();
    while (each.fetch()) {
      all.push_back(one);
    }
    return all;
  });
}

std::vector<StandingCount> standing_counts(Store& store, const Scope& scope) {
  return in_plain_words(store.connection().address(), [&] {
    StandingCount one;
    int passed = 0;
    int stop = 0;
    int read = 0;
    soci::statement each =
        (store.connection().sql().prepare << "SELECT mean, missed, passed, safety_stop, CASE WHEN readings > "
                                             "0 THEN 1 ELSE 0 END AS was_read, "
                                             "count(*) FROM " +
                                                 counting(store, scope, "score", "id") +
                                                 " GROUP BY mean, missed, passed, safety_stop, was_read",
         into(one.mean), into(one.missed), into(passed), into(stop), into(read), into(one.times));
    std::vector<StandingCount> all;
    each.execute();
    while (each.fetch()) {
      one.passed = passed != 0;
      one.safety_stop = stop != 0;
      one.read = read != 0;
      all.push_back(one);
    }
    return all;
  });
}

std::vector<TubeRead> tubes_read(Store& store, const Scope& scope, int most) {
  return in_plain_words(store.connection().address(), [&] {
    std::vector<std::pair<long long, TubeRead>> all;
    std::map<long long, int> of_item;
    long long score = 0;
    int intensity = 0;
    TubeRead one;
    const auto fetch = [&](const std::string& query) {
      soci::statement each = (store.connection().sql().prepare << query, into(score), into(one.item),
                              into(one.student), into(intensity), into(one.read));
      each.execute();
      while (each.fetch()) {
        if (of_item[one.item]++ < most) {
          one.intensity = intensity / thousandths;
          all.emplace_back(score, one);
        }
      }
    };
    const std::string columns = "SELECT score, item, student, intensity, read FROM ";
    if (is_all(scope)) {
      for (const auto& [item, name] :
           item_names(store)) { // The latest of one item stand together in an index.
        fetch(columns + fmt::format("reading WHERE current = 1 AND item = {} AND read IS NOT NULL ORDER BY "
                                    "score DESC LIMIT {}",
                                    item, most));
      }
    } else {
      fetch("SELECT reading.score, item, student, intensity, read FROM " +
            counting(store, scope, "reading", "score") +
            " AND read IS NOT NULL ORDER BY reading.score DESC, item");
    }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    std::vector<TubeRead> oldest_first;
    oldest_first.reserve(all.size());
    for (const auto& [number, read] : all) {
      oldest_first.push_back(read);
    }
    return oldest_first;
  });
}

std::vector<ItemMark> item_marks(Store& store, const Scope& scope) {
  return in_plain_words(store.connection().address(), [&] {
    ItemMark one;
    int ledger = 0;
    soci::statement each =
        (store.connection().sql().prepare
             << "SELECT k.student, e.name, i.name, i.label, m.ledger, m.earned, m.possible, a.text, b.text "
                "FROM "
                "(SELECT id, student, exercise, row_number() OVER (PARTITION BY student, exercise ORDER BY "
                "sitting) AS place FROM " +
                    counting(store, scope, "score", "id") +
                    ") k JOIN mark m ON m.score = k.id JOIN exercise e ON e.id = k.exercise JOIN item i ON "
                    "i.id = m.item "
                    "JOIN word a ON a.id = m.entered JOIN word b ON b.id = m.expected WHERE k.place = 1 "
                    "ORDER BY k.student, e.name, m.n",
         into(one.student), into(one.exercise), into(one.item), into(one.label), into(ledger),
         into(one.earned), into(one.possible), into(one.entered), into(one.expected));
    std::vector<ItemMark> all;
    each.execute();
    while (each.fetch()) {
      one.ledger = static_cast<scoring::Ledger>(ledger);
      all.push_back(one);
    }
    return all;
  });
}

long long plain_pass(Store& store) {
  return in_plain_words(store.connection().address(), [&] {
    return store.connection().number("SELECT sum(per_mille) FROM reading").value_or(0);
  });
}

} // namespace matula::records
