#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pads.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

constexpr double least = -0.5; // Grades at the left edge.
const ImU32 ink_white = IM_COL32(242, 240, 232, 255);
const ImU32 ink_grey = IM_COL32(150, 146, 140, 255);
const ImU32 ink_dark = IM_COL32(70, 68, 64, 255);

/// One row for each line between two grades, all over one scale in grades.
class LinesPicture {
public:
  LinesPicture(const learner::GroupLines& group, const std::vector<judging::StudentView>& students)
      : group_(group), students_(students), most_(static_cast<double>(group.words.size()) - 0.5) {
    for (const auto& line : group.lines) {
      side_ = std::max(side_, ImGui::CalcTextSize(label(line).c_str()).x);
    }
    side_ += ImGui::GetFontSize();
    width_ = ImGui::GetContentRegionAvail().x - side_;
    tall_ = ImGui::GetTextLineHeight() * 1.8F;
  }

  void draw() {
    at_ = ImGui::GetCursorScreenPos();
    const float height = tall_ * static_cast<float>(group_.lines.size());
    scale(height);
    for (std::size_t i = 0; i < group_.lines.size(); ++i) {
      row(i);
    }
    ImGui::Dummy({side_ + width_, height + ImGui::GetTextLineHeight() * 1.3F});
  }

private:
  static std::string label(const learner::OwnLine& line) {
    return brief(line.below) + " | " + brief(line.above);
  }
  [[nodiscard]] float x(double grade) const {
    const double share = (std::clamp(grade, least, most_) - least) / (most_ - least);
    return at_.x + side_ + width_ * static_cast<float>(share);
  }
  /// Words of the grades below, each in the middle of its place on the scale.
  void scale(float height) const {
    ImDrawList* draw = ImGui::GetWindowDrawList();
    draw->AddLine({x(least), at_.y + height}, {x(most_), at_.y + height}, ink_grey);
    float free = at_.x;
    for (std::size_t i = 0; i < group_.words.size(); ++i) {
      const std::string word = brief(group_.words[i]);
      const ImVec2 size = ImGui::CalcTextSize(word.c_str());
      const float left = x(static_cast<double>(i)) - size.x / 2;
      draw->AddLine({x(static_cast<double>(i)), at_.y + height},
                    {x(static_cast<double>(i)), at_.y + height + 4}, ink_grey);
      if (left >= free) {
        draw->AddText({left, at_.y + height + 5}, ImGui::GetColorU32(ImGuiCol_Text), word.c_str());
        free = left + size.x + 6;
      }
    }
  }
  void row(std::size_t i) const {
    ImDrawList* draw = ImGui::GetWindowDrawList();
    const auto& line = group_.lines[i];
    const float top = at_.y + tall_ * static_cast<float>(i);
    const float middle = top + tall_ / 2;
    draw->AddText({at_.x, middle - ImGui::GetTextLineHeight() / 2}, ImGui::GetColorU32(ImGuiCol_Text),
                  label(line).c_str());
    draw->AddLine({x(least), middle}, {x(most_), middle}, ink_dark);
    for (float y = top + 2; y < top + tall_ - 4; y += 8) { // Dashed.
      draw->AddLine({x(line.reference), y}, {x(line.reference), y + 4}, ink_white, 2);
    }
    for (const auto& student : students_) {
      const auto* own = find_group(student.lines, group_.key);
      if (own != nullptr && i < own->lines.size()) {
        const float at = x(own->lines[i].own.value);
        draw->AddLine({at, top + tall_ * 0.68F}, {at, top + tall_ * 0.95F}, ink_grey);
      }
    }
    draw->AddRectFilled({x(line.own.low), middle - 3}, {x(line.own.high), middle + 3}, ink_grey);
    draw->AddCircleFilled({x(line.own.value), middle}, tall_ * 0.16F, ink_white);
  }

  const learner::GroupLines& group_;
  const std::vector<judging::StudentView>& students_;
  double most_;
  float side_ = 0;
  float width_ = 0;
  float tall_ = 0;
  ImVec2 at_;
};

const learner::GroupLines* choose_group(App& app, ClassView& view) {
  const auto& groups = view.room.page()->view.lines;
  const auto* shown = find_group(groups, view.group);
  shown = shown == nullptr && !groups.empty() ? &groups.front() : shown;
  bool first = true;
  for (const auto& group : groups) {
    if (!first) {
      flow(width_of(group.title.c_str()) + ImGui::GetFrameHeight());
    }
    first = false;
    if (app.widgets.choice(("group." + group.key).c_str(), group.title, &group == shown)) {
      view.group = group.key;
      shown = &group;
    }
  }
  return shown;
}

void draw_shift(App& app, const learner::GroupLines& group) {
  const std::string words =
      group.shift
          ? fmt::format("{} readings: shift {:+.2f} grades ({:+.2f} to {:+.2f}), unsteadiness {:.2f}.",
                        group.readings, group.shift->value, group.shift->low, group.shift->high, group.spread)
          : fmt::format("{} readings: too few to tell.", group.readings);
  app.widgets.tell("figure.shift", words);
  ImGui::TextWrapped("%s", words.c_str());
}

void draw_line_figures(const learner::GroupLines& group) {
  if (!ImGui::BeginTable("figures", 3, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("Line between");
  ImGui::TableSetupColumn("The class (nine times in ten)");
  ImGui::TableSetupColumn("Reference");
  table_headings();
  for (const auto& line : group.lines) {
    ImGui::TableNextRow();
    cell(line.below + " and " + line.above);
    cell(fmt::format("{:.2f} ({:.2f} to {:.2f}){}", line.own.value, line.own.low, line.own.high,
                     line.sentence.empty() ? "" : ": off by more than chance"));
    cell(fmt::format("{:.1f}", line.reference));
  }
  ImGui::EndTable();
}

/// What a student's readings carry about this group: a shift of all lines, and single lines drawn elsewhere.
std::string elsewhere(const learner::GroupLines& own) {
  std::string words;
  if (own.shift && !own.sentence.empty()) {
    words = fmt::format("all of them by {:+.2f} grades ({:+.2f} to {:+.2f})", own.shift->value,
                        own.shift->low, own.shift->high);
  }
  for (const auto& line : own.lines) {
    if (!line.sentence.empty()) {
      words += fmt::format("{}{} | {} at {:.2f} ({:.2f} to {:.2f}) instead of {:.1f}",
                           words.empty() ? "" : "; ", brief(line.below), brief(line.above), line.own.value,
                           line.own.low, line.own.high, line.reference);
    }
  }
  return words;
}

void draw_elsewhere(App& app, const ClassView& view, const learner::GroupLines& group) {
  heading("Students who draw their lines elsewhere");
  int found = 0;
  for (const auto& student : view.room.page()->view.students) {
    const auto* own = find_group(student.lines, group.key);
    const std::string words = own == nullptr ? "" : elsewhere(*own);
    if (!words.empty()) {
      ++found;
      point(fmt::format("{}, {} readings: {}", view.room.page()->call(student.sum.pseudonym, view.by_name),
                        own->readings, words));
    }
  }
  app.widgets.tell("figure.elsewhere", std::to_string(found));
  if (found == 0) {
    ImGui::TextWrapped("No student's readings carry such a sentence.");
  }
}

void draw_swaps(const judging::ClassView& of_class) {
  for (const auto& swap : of_class.swaps) {
    if (!swap.sentence.empty()) {
      point(fmt::format("{} and {} are taken for each other: of {} tubes of either {} were called the other, "
                        "where unsteadiness alone explains {:.0f}.",
                        swap.one, swap.other, swap.tubes, swap.swapped, swap.explained));
    }
  }
}

} // namespace

const learner::GroupLines* find_group(const std::vector<learner::GroupLines>& groups,
                                      const std::string& key) {
  const auto found =
      std::find_if(groups.begin(), groups.end(), [&](const auto& group) { return group.key == key; });
  return found == groups.end() ? nullptr : &*found;
}

void draw_class_lines_picture(const learner::GroupLines& group,
                              const std::vector<judging::StudentView>& students) {
  LinesPicture(group, students).draw();
}

void draw_class_lines(App& app) {
  ClassView& view = *app.classes;
  heading("Where the lines between grades are drawn");
  const auto* group = choose_group(app, view);
  if (group == nullptr) {
    ImGui::TextWrapped("No reading has been taken in yet.");
    return;
  }
  draw_shift(app, *group);
  if (!group->lines.empty()) {
    draw_class_lines_picture(*group, view.room.page()->view.students);
    ImGui::TextWrapped("Dashed: the reference reader. Dot and bar: the class as one reader. Ticks: each "
                       "student. Weak tubes left, strong ones right.");
    draw_line_figures(*group);
  }
  if (group->key == "copper") {
    draw_swaps(view.room.page()->view);
  }
  draw_elsewhere(app, view, *group);
}

} // namespace matula::window
