#include "engine/classroom/student_order.hpp"

#include <algorithm>
#include <numeric>

namespace matula::classroom {
namespace {

/// What a column counts; passed and exact as shares, for students have not all sat the same number.
double figure(const judging::StudentView& student, StudentColumn column) {
  const auto share = [](int part, int all) { return all > 0 ? static_cast<double>(part) / all : 0.0; };
  const auto& sum = student.sum;
  switch (column) {
  case StudentColumn::Sittings:
    return sum.sittings;
  case StudentColumn::Passed:
    return share(sum.passed, sum.sittings);
  case StudentColumn::Mean:
    return student.mean;
  case StudentColumn::Exact:
    return share(sum.exact, sum.readings);
  case StudentColumn::Missed:
    return sum.missed;
  case StudentColumn::FalseAlarms:
    return sum.false_alarms;
  case StudentColumn::Stops:
    return sum.stops;
  case StudentColumn::Name:
    break;
  }
  return 0;
}

} // namespace

std::vector<std::size_t> students_in_order(const StorePage& page, StudentColumn column, bool down,
                                           bool by_name) {
  const auto& students = page.view.students;
  std::vector<std::size_t> order(students.size());
  std::iota(order.begin(), order.end(), std::size_t{0});
  const auto who = [&](std::size_t i) { return page.call(students[i].sum.pseudonym, by_name); };
  std::vector<std::string> names;
  for (const std::size_t i : order) {
    names.push_back(who(i));
  }
  std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    if (column == StudentColumn::Name && names[a] != names[b]) {
      return down ? names[b] < names[a] : names[a] < names[b];
    }
    const double one = figure(students[a], column);
    const double other = figure(students[b], column);
    if (one != other) {
      return down ? other < one : one < other;
    }
    return students[a].sum.pseudonym < students[b].sum.pseudonym;
  });
  return order;
}

} // namespace matula::classroom
