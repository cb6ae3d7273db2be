#include "engine/records/rescore.hpp"

#include "engine/records/in_order.hpp"
#include "engine/records/trouble.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::records {

namespace {

using Made = tl::expected<Marked, std::string>;

/// Marks by item; the same item twice is told apart by its place.
std::map<std::string, MarkRow> by_item(const std::vector<MarkRow>& marks) {
  std::map<std::string, MarkRow> all;
  for (const MarkRow& mark : marks) {
    std::string key = mark.item;
    while (all.count(key) > 0) {
      key += "'";
    }
    all[key] = mark;
  }
  return all;
}

/// The score that counts, of one sitting.
SittingRow current(Store& store, const SittingRow& of) {
  Scope scope;
  scope.pseudonym = of.pseudonym;
  scope.exercise = of.exercise;
  for (const SittingRow& row : store.sittings(scope)) {
    if (row.number == of.number) {
      return row;
    }
  }
  throw Trouble(fmt::format("Sitting {} was removed meanwhile.", of.number));
}

/// Stores the new score, or on trial looks at it only.
Rescored marked_anew(Store& store, const SittingRow& before, const Marked& marked,
                     const RescoreWishes& wishes) {
  if (!wishes.on_trial) {
    store.add_score(before.number, marked, wishes.now_s);
    return compare_scores(store, before, current(store, before));
  }
  Rescored one;
  store.try_score(before.number, marked, wishes.now_s,
                  [&] { one = compare_scores(store, before, current(store, before)); });
  return one;
}

/// Counts it, and says what became of it.
std::string note(RescoreSum& sum, Rescored one) {
  ++sum.sittings;
  sum.passed_before += one.before.standing.passed ? 1 : 0;
  sum.passed_now += one.now.standing.passed ? 1 : 0;
  if (!one.differs()) {
    ++sum.as_before;
    return "marked as before";
  }
  std::string words = fmt::format("{} marks came out otherwise", one.changes.size());
  sum.changed.push_back(std::move(one));
  return words;
}

} // namespace

bool Rescored::differs() const {
  const auto& a = before.standing;
  const auto& b = now.standing;
  return !changes.empty() || a.mean != b.mean || a.passed != b.passed ||
         a.missed_findings != b.missed_findings || before.why_not != now.why_not;
}

Rescored compare_scores(Store& store, const SittingRow& before, const SittingRow& now) {
  Rescored one{before, now, {}};
  const auto old_marks = by_item(store.marks(before));
  const auto new_marks = by_item(store.marks(now));
  for (const auto& [item, mark] : old_marks) {
    const auto other = new_marks.find(item);
    if (other == new_marks.end()) {
      one.changes.push_back({item, mark.label, mark.earned, {}, mark.possible, {}});
    } else if (other->second.earned != mark.earned || other->second.possible != mark.possible) {
      one.changes.push_back(
          {item, mark.label, mark.earned, other->second.earned, mark.possible, other->second.possible});
    }
  }
  for (const auto& [item, mark] : new_marks) {
    if (old_marks.count(item) == 0) {
      one.changes.push_back({item, mark.label, {}, mark.earned, {}, mark.possible});
    }
  }
  return one;
}

RescoreSum rescore(Store& store, Marker& marker, const RescoreWishes& wishes, const Progress& progress) {
  RescoreSum sum;
  rescore(store, marker, wishes, progress, sum);
  return sum;
}

void rescore(Store& store, Marker& marker, const RescoreWishes& wishes, const Progress& progress,
             RescoreSum& sum) {
  auto rows = store.sittings(wishes.scope);
  rows.erase(
      std::remove_if(rows.begin(), rows.end(), [](const SittingRow& row) { return row.continued_in != 0; }),
      rows.end());
  std::vector<Incoming> originals;
  originals.reserve(rows.size());
  for (const SittingRow& row : rows) {
    originals.push_back(store.original(row.number));
  }
  in_order<Made>(
      rows.size(), wishes.threads,
      [&](std::size_t i) {
        return wishes.other_scenario.empty() ? marker.mark(originals[i])
                                             : marker.mark_under(originals[i], wishes.other_scenario);
      },
      [&](std::size_t i, Made marked) {
        std::string words = "refused";
        if (!marked) {
          sum.refused.push_back({originals[i].came_from, marked.error()});
        } else {
          if (!wishes.other_scenario.empty()) {
            marked->incoming.scenario_text = wishes.other_scenario;
          }
          words = note(sum, marked_anew(store, rows[i], *marked, wishes));
        }
        if (progress) {
          progress({i + 1, rows.size(), originals[i].came_from, words});
        }
      });
}

} // namespace matula::records
