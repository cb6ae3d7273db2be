#include "engine/judging/figures.hpp"

#include <algorithm>
#include <fmt/format.h>
#include <map>

namespace matula::judging {

namespace {

using records::ItemMark;

/// The marks of one case: students by items.
struct Sheet {
  std::string exercise;
  std::vector<std::string> items; ///< In the order of the first student's marks.
  std::map<std::string, const ItemMark*> example;
  std::map<long long, std::map<std::string, const ItemMark*>> students;
};

std::vector<Sheet> sheets_of(const std::vector<ItemMark>& marks) {
  std::map<std::string, Sheet> sheets;
  for (const ItemMark& mark : marks) {
    if (mark.possible <= 0) {
      continue;
    }
    Sheet& sheet = sheets[mark.exercise];
    sheet.exercise = mark.exercise;
    if (sheet.example.try_emplace(mark.item, &mark).second) {
      sheet.items.push_back(mark.item);
    }
    sheet.students[mark.student].try_emplace(mark.item, &mark);
  }
  std::vector<Sheet> all;
  for (auto& [exercise, sheet] : sheets) {
    all.push_back(std::move(sheet));
  }
  return all;
}

bool is_right(const ItemMark* mark, const Rules& rules) {
  constexpr int per_mille = 1000;
  return mark != nullptr && mark->earned * per_mille >= mark->possible * rules.right_from;
}

const ItemMark* of(const std::map<std::string, const ItemMark*>& student, const std::string& item) {
  const auto found = student.find(item);
  return found == student.end() ? nullptr : found->second;
}

statistics::ScoreTable table_of(const Sheet& sheet, const Rules& rules) {
  statistics::ScoreTable table{sheet.students.size(), sheet.items.size(), {}};
  for (const auto& [student, marks] : sheet.students) {
    for (const auto& item : sheet.items) {
      table.scores.push_back(is_right(of(marks, item), rules) ? 1 : 0);
    }
  }
  return table;
}

/// What those who had it wrong wrote most, among `students`.
void find_favourite(ItemView& view, const std::vector<const ItemMark*>& written, const Rules& rules) {
  std::map<std::string, int> times;
  for (const ItemMark* mark : written) {
    if (mark != nullptr && !is_right(mark, rules) && !mark->entered.empty()) {
      ++times[mark->entered];
    }
  }
  for (const auto& [word, count] : times) {
    if (count > view.favourite_times) {
      view.favourite_wrong = word;
      view.favourite_times = count;
    }
  }
}

/// Rows of the students best at all other items.
std::vector<std::size_t> best_at_others(const statistics::ScoreTable& table, std::size_t item,
                                        const Rules& rules) {
  std::vector<std::pair<int, std::size_t>> sums;
  for (std::size_t s = 0; s < table.persons; ++s) {
    int sum = 0;
    for (std::size_t i = 0; i < table.items; ++i) {
      sum += i == item ? 0 : table.scores[s * table.items + i];
    }
    sums.emplace_back(-sum, s);
  }
  std::sort(sums.begin(), sums.end());
  std::vector<std::size_t> best;
  const auto many = static_cast<std::size_t>(rules.best_share * static_cast<double>(table.persons) + 0.5);
  for (std::size_t s = 0; s < many && s < sums.size(); ++s) {
    best.push_back(sums[s].second);
  }
  return best;
}

/// The highest that the correlation with the rest may well be, one-sided 95 %.
double rest_at_most(const ItemView& view) {
  constexpr double one_sided = 1.6448536269514722;
  return statistics::correlation_at_most(*view.with_rest, static_cast<std::size_t>(view.students), one_sided);
}

/// Why a teacher should look at an item; the worst only.
std::string badness(const ItemView& view, const statistics::ScoreTable& table, std::size_t item,
                    const std::vector<const ItemMark*>& written, const Rules& rules) {
  if (view.students < rules.students_from) {
    return "";
  }
  const auto best = best_at_others(table, item, rules);
  std::map<std::string, int> wrote;
  int wrong = 0;
  for (const std::size_t s : best) {
    if (table.scores[s * table.items + item] == 0) {
      ++wrong;
      wrote[written[s] != nullptr ? written[s]->entered : std::string()] += 1;
    }
  }
  const auto most = std::max_element(wrote.begin(), wrote.end(),
                                     [](const auto& a, const auto& b) { return a.second < b.second; });
  if (view.with_rest && *view.with_rest < 0 && view.ledger == scoring::Ledger::Interpretation &&
      most != wrote.end() && 2 * most->second > static_cast<int>(best.size())) {
    return fmt::format(
        "{} of the {} students best at everything else wrote \"{}\", which counts as wrong, and the better "
        "they "
        "are the more often they lose it (correlation {:+.2f}): look whether it is keyed right.",
        most->second, best.size(), most->first, *view.with_rest);
  }
  if (view.right < rules.hard_below) {
    return fmt::format("Only {:.0f} % had it right, and of the {} students best at everything else {} had it "
                       "wrong: it was not "
                       "taught, or it asks for more than can be seen.",
                       100 * view.right, best.size(), wrong);
  }
  const bool of_the_work = view.ledger == scoring::Ledger::Process || view.ledger == scoring::Ledger::Safety;
  if (of_the_work || !view.with_rest) {
    return ""; // What all have learnt to do is no fault of an item.
  }
  if (rest_at_most(view) < 0) {
    return fmt::format("Students good at everything else had it wrong more often (correlation {:+.2f}).",
                       *view.with_rest);
  }
  if (view.right > rules.easy_above) {
    return fmt::format("{:.0f} % had it right: it tells nobody from anybody.", 100 * view.right);
  }
  if (rest_at_most(view) < rules.flat_below) {
    return fmt::format("It hardly tells good students from others (correlation {:+.2f}).", *view.with_rest);
  }
  return "";
}

CaseView case_of(const Sheet& sheet, const Rules& rules) {
  CaseView view;
  view.exercise = sheet.exercise;
  view.students = static_cast<int>(sheet.students.size());
  const auto table = table_of(sheet, rules);
  const auto figures = statistics::analyse_items(table);
  const bool enough = view.students >= rules.discrimination_from && figures.has_value();
  if (enough) {
    view.kr20 = figures->alpha;
    view.error = figures->error;
  }
  for (std::size_t i = 0; i < sheet.items.size(); ++i) {
    const ItemMark& example = *sheet.example.at(sheet.items[i]);
    ItemView item;
    item.item = example.item;
    item.label = example.label;
    item.ledger = example.ledger;
    std::vector<const ItemMark*> written;
    int right = 0;
    for (const auto& [student, marks] : sheet.students) {
      written.push_back(of(marks, item.item));
      item.students += written.back() != nullptr ? 1 : 0;
      right += is_right(written.back(), rules) ? 1 : 0;
    }
    item.right = item.students > 0 ? static_cast<double>(right) / item.students : 0;
    if (enough) {
      item.with_rest = figures->items[i].with_rest;
    }
    find_favourite(item, written, rules);
    item.behaved_badly = badness(item, table, i, written, rules);
    view.items.push_back(std::move(item));
  }
  return view;
}

} // namespace

std::vector<CaseView> cases_of(const std::vector<ItemMark>& marks, const Rules& rules) {
  std::vector<CaseView> all;
  for (const Sheet& sheet : sheets_of(marks)) {
    all.push_back(case_of(sheet, rules));
  }
  return all;
}

} // namespace matula::judging
