#include "engine/export/plots.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::exports {

namespace {

/// A picture of so many units, drawn bit by bit.
class Picture {
public:
  Picture(double width, double height, const std::string& words)
      : text_(fmt::format("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {:.0f} {:.0f}\" "
                          "width=\"{:.0f}\" height=\"{:.0f}\" "
                          "role=\"img\" aria-label=\"{}\" font-family=\"sans-serif\" font-size=\"11\">\n",
                          width, height, width, height, escaped(words))) {}

  void box(double x, double y, double w, double h, int percent_grey, const char* edge = "#777") {
    const int level = 255 - percent_grey * 255 / 100;
    text_ += fmt::format("<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" "
                         "fill=\"rgb({},{},{})\" stroke=\"{}\"/>\n",
                         x, y, w, h, level, level, level, edge);
  }
  void frame(double x, double y, double w, double h) {
    text_ += fmt::format("<rect x=\"{:.1f}\" y=\"{:.1f}\" width=\"{:.1f}\" height=\"{:.1f}\" fill=\"none\" "
                         "stroke=\"#000\" stroke-width=\"2\"/>\n",
                         x, y, w, h);
  }
  void line(double x1, double y1, double x2, double y2, double width = 1, const char* dash = "",
            const char* colour = "#000") {
    text_ += fmt::format("<line x1=\"{:.1f}\" y1=\"{:.1f}\" x2=\"{:.1f}\" y2=\"{:.1f}\" stroke=\"{}\" "
                         "stroke-width=\"{:.1f}\"{}/>\n",
                         x1, y1, x2, y2, colour, width,
                         dash[0] == '\0' ? "" : fmt::format(" stroke-dasharray=\"{}\"", dash));
  }
  void dot(double x, double y, double radius, bool filled) {
    text_ += fmt::format("<circle cx=\"{:.1f}\" cy=\"{:.1f}\" r=\"{:.1f}\" fill=\"{}\" stroke=\"#000\"/>\n",
                         x, y, radius, filled ? "#000" : "#fff");
  }
  void words(double x, double y, const std::string& text, const char* anchor = "start",
             const char* colour = "#000", int size = 11) {
    text_ += fmt::format(
        "<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\" fill=\"{}\" font-size=\"{}\">{}</text>\n", x, y,
        anchor, colour, size, escaped(text));
  }
  void path(const std::string& points, const char* dash) {
    text_ += fmt::format("<polyline points=\"{}\" fill=\"none\" stroke=\"#000\" stroke-width=\"1.6\"{}/>\n",
                         points, dash[0] == '\0' ? "" : fmt::format(" stroke-dasharray=\"{}\"", dash));
  }
  [[nodiscard]] std::string made() const { return text_ + "</svg>\n"; }

private:
  std::string text_;
};

/// The field of a plot, from 0..1 each way to the picture's units.
struct Field {
  double left = 52;
  double top = 14;
  double width = 360;
  double height = 190;

  [[nodiscard]] double x(double share) const { return left + share * width; }
  [[nodiscard]] double y(double share) const { return top + (1 - share) * height; }

  void axes(Picture& picture, const std::string& across, const std::string& up) const {
    picture.line(left, top, left, top + height);
    picture.line(left, top + height, left + width, top + height);
    picture.words(left + width / 2, top + height + 34, across, "middle");
    picture.words(left, top - 3, up);
  }
};

} // namespace

std::string escaped(const std::string& text) {
  std::string safe;
  for (const char letter : text) {
    switch (letter) {
    case '&':
      safe += "&amp;";
      break;
    case '<':
      safe += "&lt;";
      break;
    case '>':
      safe += "&gt;";
      break;
    case '"':
      safe += "&quot;";
      break;
    default:
      safe += letter;
    }
  }
  return safe;
}

std::string confusion_plot(const judging::TestAgreement& test) {
  constexpr double cell = 46;
  constexpr double side = 84;
  const std::size_t n = test.words.size();
  const double size = cell * static_cast<double>(n);
  Picture picture(side + size + 12, 44 + size + 8, test.title + ": what was written for what was shown");
  picture.words(side + size / 2, 13, "written", "middle");
  picture.words(4, 34, "shown");
  for (std::size_t i = 0; i < n; ++i) {
    const double at = static_cast<double>(i) * cell;
    picture.words(side + at + cell / 2, 34, test.words[i], "middle", "#000", 10);
    picture.words(side - 6, 44 + at + cell / 2 + 4, test.words[i], "end", "#000", 10);
    double row = 0;
    for (std::size_t j = 0; j < n; ++j) {
      row += test.table.count(i, j);
    }
    for (std::size_t j = 0; j < n; ++j) {
      const double count = test.table.count(i, j);
      constexpr double darkest = 75; // Per cent of black: the number in it stays readable.
      const int grey = row > 0 ? static_cast<int>(darkest * count / row + 0.5) : 0;
      const double x = side + static_cast<double>(j) * cell;
      picture.box(x, 44 + at, cell, cell, grey);
      if (count > 0) {
        picture.words(x + cell / 2, 44 + at + cell / 2 + 4, fmt::format("{:.0f}", count), "middle",
                      grey > 45 ? "#fff" : "#000");
      }
    }
  }
  for (std::size_t i = 0; i < n; ++i) {
    const double at = static_cast<double>(i) * cell;
    picture.frame(side + at, 44 + at, cell, cell);
  }
  return picture.made();
}

std::string lines_plot(const learner::GroupLines& of_class,
                       const std::vector<judging::StudentView>& students) {
  const Field field{110, 20, 460,
                    44.0 * static_cast<double>(std::max<std::size_t>(of_class.lines.size(), 1))};
  Picture picture(field.left + field.width + 20, field.top + field.height + 44,
                  "Where the lines between grades are drawn: " + of_class.title);
  constexpr double highest = 6; // Grades.
  field.axes(picture, "what the tube shows, in grades", "");
  for (int grade = 0; grade <= 5 && grade < static_cast<int>(of_class.words.size()); ++grade) {
    picture.words(field.x((grade + 0.5) / highest), field.top + field.height + 16,
                  of_class.words[static_cast<std::size_t>(grade)], "middle", "#000", 10);
  }
  const auto place = [&](double grades) { return field.x(std::clamp((grades + 0.5) / highest, 0.0, 1.0)); };
  for (std::size_t k = 0; k < of_class.lines.size(); ++k) {
    const auto& line = of_class.lines[k];
    const double middle = field.top + 44.0 * static_cast<double>(k) + 22;
    picture.words(field.left - 6, middle + 4, line.below + " | " + line.above, "end", "#000", 10);
    picture.line(place(line.reference), middle - 20, place(line.reference), middle + 20, 1, "4 3");
    for (const auto& student : students) {
      for (const auto& group : student.lines) {
        if (group.key == of_class.key && k < group.lines.size()) {
          picture.line(place(group.lines[k].own.value), middle + 6, place(group.lines[k].own.value),
                       middle + 18, 0.7, "", "#666");
        }
      }
    }
    picture.line(place(line.own.low), middle - 6, place(line.own.high), middle - 6, 2);
    picture.dot(place(line.own.value), middle - 6, 4, true);
  }
  return picture.made();
}

std::string items_plot(const judging::CaseView& view) {
  const Field field;
  Picture picture(field.left + field.width + 20, field.top + field.height + 44, "Items of " + view.exercise);
  field.axes(picture, "share of students who had it right", "correlation with the rest");
  constexpr double lowest = -0.4;
  constexpr double highest = 0.8;
  const auto up = [&](double r) { return field.y(std::clamp((r - lowest) / (highest - lowest), 0.0, 1.0)); };
  for (const double r : {-0.4, 0.0, 0.4, 0.8}) {
    picture.words(field.left - 5, up(r) + 4, fmt::format("{:+.1f}", r), "end", "#000", 10);
  }
  picture.line(field.left, up(0), field.left + field.width, up(0), 1, "3 3", "#777");
  for (const double share : {0.0, 0.25, 0.5, 0.75, 1.0}) {
    picture.words(field.x(share), field.top + field.height + 15, fmt::format("{:.0f} %", 100 * share),
                  "middle", "#000", 10);
  }
  for (std::size_t i = 0; i < view.items.size(); ++i) {
    const auto& item = view.items[i];
    if (!item.with_rest) {
      continue;
    }
    const double x = field.x(item.right);
    const double y = up(*item.with_rest);
    if (item.behaved_badly.empty()) {
      picture.dot(x, y, 3.5, false);
      continue;
    }
    picture.line(x - 4, y - 4, x + 4, y + 4, 1.8);
    picture.line(x - 4, y + 4, x + 4, y - 4, 1.8);
    const bool right_end = x > field.left + field.width - 24;
    picture.words(right_end ? x - 7 : x + 7, y - 3, std::to_string(i + 1), right_end ? "end" : "start");
  }
  return picture.made();
}

std::string standard_plot(const judging::StandardView& view) {
  const Field field;
  Picture picture(field.left + field.width + 20, field.top + field.height + 44,
                  "Share passed with another pass mark");
  field.axes(picture, "pass mark, per mille of the readings' credit", "share of the sittings");
  if (view.steps.size() < 2) {
    return picture.made();
  }
  const double from = view.steps.front().mark;
  const double to = view.steps.back().mark;
  const auto across = [&](double mark) { return field.x((mark - from) / (to - from)); };
  std::string passed;
  std::string by_mean;
  for (const auto& step : view.steps) {
    passed += fmt::format("{:.1f},{:.1f} ", across(step.mark), field.y(step.passed));
    by_mean += fmt::format("{:.1f},{:.1f} ", across(step.mark), field.y(step.by_mean));
  }
  for (const double share : {0.0, 0.5, 1.0}) {
    picture.words(field.left - 5, field.y(share) + 4, fmt::format("{:.0f} %", 100 * share), "end", "#000",
                  10);
  }
  for (double mark = from; mark <= to; mark += 100) {
    picture.words(across(mark), field.top + field.height + 15, fmt::format("{:.0f}", mark), "middle", "#000",
                  10);
  }
  picture.line(across(view.mark), field.top, across(view.mark), field.top + field.height, 1, "4 3", "#555");
  picture.words(across(view.mark) + 4, field.top + field.height - 6, fmt::format("now {}", view.mark),
                "start", "#000", 10);
  picture.path(passed, "");
  picture.path(by_mean, "6 4");
  picture.words(field.left + 8, field.top + field.height - 36, "solid: passed", "start", "#000", 10);
  picture.words(field.left + 8, field.top + field.height - 22, "dashed: by the mean alone", "start", "#000",
                10);
  return picture.made();
}

std::string faults_plot(const std::vector<records::FaultCount>& faults, std::size_t most) {
  const std::size_t n = std::min(most, faults.size());
  constexpr double row = 20;
  constexpr double side = 300;
  constexpr double width = 240;
  Picture picture(side + width + 120, row * static_cast<double>(n) + 8, "The dearest faults");
  for (std::size_t i = 0; i < n; ++i) {
    const double y = row * static_cast<double>(i) + 4;
    constexpr std::size_t longest = 52;
    const std::string label =
        faults[i].label.size() > longest ? faults[i].label.substr(0, longest) + "..." : faults[i].label;
    picture.words(side - 6, y + 13, label, "end", "#000", 10);
    const double share = faults[0].lost > 0 ? static_cast<double>(faults[i].lost) / faults[0].lost : 0;
    picture.box(side, y + 2, width * share, row - 6, 35, "#000");
    picture.words(side + width * share + 5, y + 13,
                  fmt::format("{} {}, {} {}", faults[i].lost, faults[i].lost == 1 ? "mark" : "marks",
                              faults[i].students, faults[i].students == 1 ? "student" : "students"),
                  "start", "#000", 10);
  }
  return picture.made();
}

} // namespace matula::exports
