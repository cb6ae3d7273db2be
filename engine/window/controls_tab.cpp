#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

namespace matula::window {

namespace {

constexpr ImU32 ink = IM_COL32(205, 208, 205, 255);
constexpr ImU32 faint = IM_COL32(120, 124, 122, 255);
constexpr ImU32 warn = IM_COL32(226, 190, 96, 255);
constexpr ImU32 stop = IM_COL32(232, 118, 104, 255);
constexpr ImU32 marks[] = {IM_COL32(128, 214, 206, 255), IM_COL32(240, 240, 236, 255)};
constexpr double highest_z = 4.5;

/// Where days and z-values lie on the screen.
struct Chart {
  ImVec2 from;
  ImVec2 size;
  int days = 1;

  [[nodiscard]] float x(int day) const {
    return from.x + size.x * (static_cast<float>(day) - 0.5F) / static_cast<float>(days);
  }
  [[nodiscard]] float y(double z) const {
    const double held = std::clamp(z, -highest_z, highest_z);
    return from.y + size.y * static_cast<float>(0.5 - 0.5 * held / highest_z);
  }
};

void draw_lines(const Chart& chart, ImDrawList& list) {
  const float margin = ImGui::GetFontSize() * 2.6F;
  for (int s = -3; s <= 3; ++s) {
    const ImU32 colour = s == 0 ? ink : std::abs(s) == 3 ? stop : std::abs(s) == 2 ? warn : faint;
    const float y = chart.y(s);
    list.AddLine({chart.from.x, y}, {chart.from.x + chart.size.x, y}, colour, s == 0 ? 2.0F : 1.0F);
    const std::string words = s == 0 ? "mean" : fmt::format("{:+d} s", s);
    list.AddText({chart.from.x - margin, y - ImGui::GetFontSize() * 0.5F}, colour, words.c_str());
  }
  for (int day = 5; day <= chart.days; day += 5) {
    const std::string words = std::to_string(day);
    list.AddText({chart.x(day) - ImGui::GetFontSize() * 0.3F, chart.from.y + chart.size.y + 2}, ink,
                 words.c_str());
    list.AddLine({chart.x(day), chart.from.y}, {chart.x(day), chart.from.y + chart.size.y}, faint, 0.5F);
  }
}

/// One material: dots joined by a line, a square for the second material so that colour is not needed.
void draw_points(const Chart& chart, const desk::ControlChart& shown, std::size_t control, ImDrawList& list) {
  const ImU32 colour = marks[control % 2];
  const float size = ImGui::GetFontSize() * 0.22F;
  ImVec2 last{};
  for (std::size_t i = 0; i < shown.z.size(); ++i) {
    const ImVec2 at{chart.x(static_cast<int>(i) + 1), chart.y(shown.z[i][control])};
    if (i > 0) {
      list.AddLine(last, at, colour, 1.0F);
    }
    if (control % 2 == 0) {
      list.AddCircleFilled(at, size, colour);
    } else {
      list.AddRectFilled({at.x - size, at.y - size}, {at.x + size, at.y + size}, colour);
    }
    last = at;
  }
}

/// The day under the pointer, told in words.
void tell_day(const Chart& chart, const desk::ControlChart& shown) {
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const bool inside = mouse.x >= chart.from.x && mouse.x < chart.from.x + chart.size.x &&
                      mouse.y >= chart.from.y && mouse.y < chart.from.y + chart.size.y;
  if (!inside) {
    return;
  }
  const int day = std::clamp(
      static_cast<int>((mouse.x - chart.from.x) / chart.size.x * static_cast<float>(chart.days)) + 1, 1,
      chart.days);
  std::string words = fmt::format("Day {}", day);
  for (std::size_t i = 0; i < shown.controls.size(); ++i) {
    const auto at = static_cast<std::size_t>(day) - 1;
    words += fmt::format("\n{}: grade {:.1f} ({:+.1f} s)", shown.controls[i], shown.readings[at][i],
                         shown.z[at][i]);
  }
  ImGui::SetTooltip("%s", words.c_str());
}

void draw_chart(const desk::ControlChart& shown) {
  const float em = ImGui::GetFontSize();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  const float margin = em * 2.8F;
  Chart chart;
  chart.from = {corner.x + margin, corner.y};
  chart.size = {std::max(em * 8, ImGui::GetContentRegionAvail().x - margin - em * 0.5F), em * 13};
  chart.days = std::max(1, static_cast<int>(shown.z.size()));
  ImDrawList& list = *ImGui::GetWindowDrawList();
  draw_lines(chart, list);
  for (std::size_t control = 0; control < shown.controls.size(); ++control) {
    draw_points(chart, shown, control, list);
  }
  tell_day(chart, shown);
  ImGui::Dummy({margin + chart.size.x, chart.size.y + em * 1.4F});
  for (std::size_t control = 0; control < shown.controls.size(); ++control) {
    ImGui::PushStyleColor(ImGuiCol_Text, marks[control % 2]);
    ImGui::Text("%s %s: mean %.1f, s %.2f grades", control % 2 == 0 ? "(dot)" : "(square)",
                shown.controls[control].c_str(), shown.means[control], shown.deviations[control]);
    ImGui::PopStyleColor();
  }
}

void draw_answer(App& app) {
  ControlsView& view = app.controls;
  heading("Your answer");
  ImGui::TextUnformatted("Stop on day (0: never)");
  ImGui::SameLine();
  app.widgets.number("controls.day", view.day, 0, 60, number_width(), "%.0f");
  const std::vector<std::string> rules = view.book->rules();
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x);
  app.widgets.pick("controls.rule", "##rule", rules, view.rule);
  if (app.widgets.button("controls.answer", "Answer")) {
    const auto verdict = view.book->judge(static_cast<std::size_t>(view.exercise), static_cast<int>(view.day),
                                          static_cast<std::size_t>(view.rule));
    view.verdict = verdict.words;
  }
  app.widgets.tell("controls.verdict", view.verdict);
  ImGui::TextUnformatted(view.verdict.c_str());
}

void draw_materials(App& app, ControlsView& view) {
  if (!view.book) {
    auto loaded = desk::ControlBook::load(app.ground);
    if (!loaded) {
      ImGui::TextUnformatted(scenario::to_text(loaded.error()).c_str());
      return;
    }
    view.book.emplace(std::move(*loaded));
  }
  ImGui::TextUnformatted(
      "Controls are specimens of known make, read every morning before the patients. Their readings "
      "are drawn against the mean and deviation of the first twenty days.");
  const std::vector<std::string> titles = view.book->titles();
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x);
  if (app.widgets.pick("controls.exercise", "##exercise", titles, view.exercise)) {
    view.open = false;
    view.verdict.clear();
  }
  if (!view.open) {
    ImGui::TextUnformatted("The tests are done at the bench first, which takes a few seconds.");
    view.open = app.widgets.button("controls.open", "Open the record");
  }
  if (view.open) {
    const desk::ControlChart& chart = view.book->chart(static_cast<std::size_t>(view.exercise));
    ImGui::TextUnformatted(chart.story.c_str());
    draw_chart(chart);
    draw_answer(app);
  }
}

} // namespace

void draw_controls_tab(App& app) {
  ControlsView& view = app.controls;
  ImGui::PushTextWrapPos(0);
  if (app.widgets.choice("controls.show=materials", "Control materials", !view.shows_float)) {
    view.shows_float = false;
  }
  ImGui::SameLine();
  if (app.widgets.choice("controls.show=float", "Urinometer in water", view.shows_float)) {
    view.shows_float = true;
  }
  if (view.shows_float) {
    draw_float_record(app);
  } else {
    draw_materials(app, view);
  }
  ImGui::PopTextWrapPos();
}

} // namespace matula::window
