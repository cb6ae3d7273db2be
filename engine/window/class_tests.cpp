#include "engine/judging/words.hpp"
#include "engine/window/class_view.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/pads.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::window {

namespace {

constexpr double percent = 100;

/// One figure with its name; a test finds it under `key`.
void figure(App& app, const char* key, const char* words, const std::string& value) {
  ImGui::TableNextRow();
  cell(words);
  cell(value);
  app.widgets.tell(std::string("figure.") + key, value);
}

void draw_figures(App& app, const judging::TestAgreement& test) {
  if (!ImGui::BeginTable("figures", 2, ImGuiTableFlags_RowBg | ImGuiTableFlags_BordersInnerH)) {
    return;
  }
  ImGui::TableSetupColumn("what", ImGuiTableColumnFlags_WidthStretch, 1.5F);
  ImGui::TableSetupColumn("value", ImGuiTableColumnFlags_WidthStretch, 1.0F);
  figure(app, "readings", "Readings",
         fmt::format("{} by {} student{}", test.readings, test.students, test.students == 1 ? "" : "s"));
  figure(app, "unwritten", "Tubes that nobody named", std::to_string(test.unwritten));
  if (test.plain) {
    figure(app, "exact", "On the very grade", fmt::format("{:.0f} %", percent * test.plain->exact));
    figure(app, "within_one", "On it or beside it",
           fmt::format("{:.0f} %", percent * test.plain->within_one));
    figure(app, "bias", "Bias, in grades (below 0: too low)",
           fmt::format("{:+.2f} (standard error {:.2f})", test.plain->bias, test.plain->bias_se));
  }
  figure(app, "kappa_linear", "Weighted kappa, linear", judging::in_words(test.kappa_linear));
  figure(app, "kappa_quadratic", "Weighted kappa, quadratic", judging::in_words(test.kappa_quadratic));
  figure(app, "ac2_linear", "AC2, linear", judging::in_words(test.gwet_linear));
  figure(app, "missed_findings", "Findings missed", std::to_string(test.missed_findings));
  figure(app, "false_alarms", "False alarms", std::to_string(test.false_alarms));
  ImGui::EndTable();
}

/// The table as squares: the lighter, the larger a share of its row; counts printed; the diagonal framed.
class Grid {
public:
  explicit Grid(const judging::TestAgreement& test) : test_(test), n_(test.words.size()) {
    float widest = ImGui::CalcTextSize("0000").x;
    for (const auto& word : test.words) {
      widest = std::max(widest, ImGui::CalcTextSize(brief(word).c_str()).x);
    }
    pad_ = ImGui::GetStyle().FramePadding.x;
    side_ = widest + 2 * pad_;
    const float room = ImGui::GetContentRegionAvail().x;
    const auto columns = static_cast<float>(n_ + 1);
    if (side_ * columns > room) {
      by_number_ = true; // The words do not fit: numbers, explained below.
      side_ = std::floor(room / columns);
      side_ = std::min(side_, ImGui::CalcTextSize("00000").x + 2 * pad_);
    }
    tall_ = ImGui::GetFrameHeight() * 1.15F;
  }

  void draw() {
    ImGui::TextUnformatted("Rows: shown to the reference reader. Columns: written.");
    origin_ = ImGui::GetCursorScreenPos();
    for (std::size_t i = 0; i < n_; ++i) {
      words(0, i + 1, label(i), ImGui::GetColorU32(ImGuiCol_Text));
      words(i + 1, 0, label(i), ImGui::GetColorU32(ImGuiCol_Text));
      row(i);
    }
    for (std::size_t i = 0; i < n_; ++i) {
      const ImVec2 at = corner(i + 1, i + 1);
      ImGui::GetWindowDrawList()->AddRect(at, {at.x + side_ - 1, at.y + tall_ - 1},
                                          IM_COL32(242, 240, 232, 255), 0, 0, 2);
    }
    ImGui::Dummy({side_ * static_cast<float>(n_ + 1), tall_ * static_cast<float>(n_ + 1)});
    if (by_number_) {
      std::string all;
      for (std::size_t i = 0; i < n_; ++i) {
        all += fmt::format("{}{}: {}", i == 0 ? "" : ", ", i + 1, test_.words[i]);
      }
      ImGui::TextWrapped("%s", all.c_str());
    }
  }

private:
  [[nodiscard]] ImVec2 corner(std::size_t row, std::size_t column) const {
    return {origin_.x + side_ * static_cast<float>(column), origin_.y + tall_ * static_cast<float>(row)};
  }
  [[nodiscard]] std::string label(std::size_t i) const {
    return by_number_ ? std::to_string(i + 1) : brief(test_.words[i]);
  }
  void words(std::size_t row, std::size_t column, const std::string& text, ImU32 colour) const {
    const ImVec2 at = corner(row, column);
    const ImVec2 size = ImGui::CalcTextSize(text.c_str());
    ImGui::GetWindowDrawList()->AddText({at.x + (side_ - size.x) / 2, at.y + (tall_ - size.y) / 2}, colour,
                                        text.c_str());
  }
  void row(std::size_t i) const {
    double sum = 0;
    for (std::size_t j = 0; j < n_; ++j) {
      sum += test_.table.count(i, j);
    }
    for (std::size_t j = 0; j < n_; ++j) {
      const double count = test_.table.count(i, j);
      const double share = sum > 0 ? count / sum : 0;
      const int level = 44 + static_cast<int>(std::lround(176 * share));
      constexpr int bright = 128;
      const ImVec2 at = corner(i + 1, j + 1);
      ImGui::GetWindowDrawList()->AddRectFilled(at, {at.x + side_ - 2, at.y + tall_ - 2},
                                                IM_COL32(level, level, level, 255));
      if (count > 0) {
        words(i + 1, j + 1, fmt::format("{:.0f}", count),
              level > bright ? IM_COL32(0, 0, 0, 255) : IM_COL32(255, 255, 255, 255));
      }
    }
  }

  const judging::TestAgreement& test_;
  std::size_t n_;
  bool by_number_ = false;
  float pad_ = 0;
  float side_ = 0;
  float tall_ = 0;
  ImVec2 origin_;
};

const judging::TestAgreement* choose_test(App& app, ClassView& view) {
  const auto& tests = view.room.page()->view.tests;
  const judging::TestAgreement* shown = nullptr;
  for (const auto& test : tests) {
    shown = shown == nullptr || test.test == view.test ? &test : shown;
  }
  bool first = true;
  for (const auto& test : tests) {
    if (!first) {
      flow(width_of(test.title.c_str()) + ImGui::GetFrameHeight());
    }
    first = false;
    if (app.widgets.choice(("test." + test.test).c_str(), test.title, &test == shown)) {
      view.test = test.test;
      shown = &test;
    }
  }
  return shown;
}

void tell_table(App& app, const judging::TestAgreement& test) {
  std::string counts;
  for (const double count : test.table.counts()) {
    counts += fmt::format("{}{:.0f}", counts.empty() ? "" : " ", count);
  }
  app.widgets.tell("figure.table", counts);
  app.widgets.tell("figure.test", test.test);
}

} // namespace

void draw_class_tests(App& app) {
  ClassView& view = *app.classes;
  heading("How each test is read");
  const auto* test = choose_test(app, view);
  if (test == nullptr) {
    ImGui::TextWrapped("No graded reading has been taken in yet.");
    return;
  }
  tell_table(app, *test);
  const bool wide = ImGui::GetContentRegionAvail().x > ImGui::GetFontSize() * 58;
  if (!ImGui::BeginTable("test", wide ? 2 : 1, ImGuiTableFlags_SizingStretchSame)) {
    return;
  }
  ImGui::TableNextColumn();
  heading(test->title.c_str());
  Grid(*test).draw();
  ImGui::TableNextColumn();
  heading("In figures");
  draw_figures(app, *test);
  ImGui::EndTable();
  ImGui::TextWrapped(
      "Kappa and AC2: agreement beyond chance, 1 is perfect; AC2 also holds where nearly every "
      "tube is of one grade. In brackets what holds in 95 of 100 classes drawn anew, student "
      "by student.");
}

} // namespace matula::window
