#include "engine/window/entries.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <optional>
#include <vector>

namespace matula::window {

namespace {

constexpr ImU32 ink = IM_COL32(205, 208, 205, 255);
constexpr ImU32 faint = IM_COL32(96, 100, 98, 255);
constexpr ImU32 mark = IM_COL32(128, 214, 206, 255);
constexpr ImU32 wanted = IM_COL32(226, 190, 96, 255);

std::optional<double> number_written(const App& app, const std::string& item) {
  std::string text = written(app, item);
  std::replace(text.begin(), text.end(), ',', '.');
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  return end == text.c_str() || !std::isfinite(value) ? std::nullopt : std::optional(value);
}

/// Square paper: what the tubes hold across, absorbance up. Only what the learner wrote is drawn on it.
struct Paper {
  ImVec2 from;
  ImVec2 size;
  double highest_value = 1;
  double highest_absorbance = 1;

  [[nodiscard]] float x(double value) const {
    return from.x + size.x * static_cast<float>(value / highest_value);
  }
  [[nodiscard]] float y(double absorbance) const {
    const double held = std::clamp(absorbance / highest_absorbance, 0.0, 1.0);
    return from.y + size.y * (1 - static_cast<float>(held));
  }
};

constexpr int across = 8;
constexpr int up = 5;

void draw_squares(const Paper& paper, ImDrawList& list) {
  const float em = ImGui::GetFontSize();
  for (int i = 0; i <= across; ++i) {
    const double value = paper.highest_value * i / across;
    const float x = paper.x(value);
    list.AddLine({x, paper.from.y}, {x, paper.from.y + paper.size.y}, i == 0 ? ink : faint, 1.0F);
    if (i % 2 == 0) {
      const std::string words = fmt::format("{:g}", value);
      list.AddText({x - em * 0.5F, paper.from.y + paper.size.y + 2}, ink, words.c_str());
    }
  }
  for (int i = 0; i <= up; ++i) {
    const double absorbance = paper.highest_absorbance * i / up;
    const float y = paper.y(absorbance);
    list.AddLine({paper.from.x, y}, {paper.from.x + paper.size.x, y}, i == 0 ? ink : faint, 1.0F);
    const std::string words = fmt::format("{:.2f}", absorbance);
    list.AddText({paper.from.x - em * 2.4F, y - em * 0.5F}, ink, words.c_str());
  }
}

/// The points the learner wrote, joined from nothing upwards, and the height of the specimen's own line.
void draw_points(const Paper& paper, const std::vector<std::pair<double, double>>& points,
                 const std::optional<double>& net, ImDrawList& list) {
  const float size = ImGui::GetFontSize() * 0.24F;
  for (std::size_t i = 0; i < points.size(); ++i) {
    const ImVec2 at{paper.x(points[i].first), paper.y(points[i].second)};
    if (i > 0) {
      list.AddLine({paper.x(points[i - 1].first), paper.y(points[i - 1].second)}, at, mark, 1.5F);
    }
    list.AddCircleFilled(at, size, mark);
  }
  if (net) {
    const float y = paper.y(*net);
    list.AddLine({paper.from.x, y}, {paper.from.x + paper.size.x, y}, wanted, 1.5F);
  }
}

/// Where the pointer stands, so that the curve can be read as with a ruler.
void tell_place(const Paper& paper, const std::string& unit) {
  const ImVec2 mouse = ImGui::GetIO().MousePos;
  const ImVec2 off{mouse.x - paper.from.x, mouse.y - paper.from.y};
  if (off.x < 0 || off.y < 0 || off.x > paper.size.x || off.y > paper.size.y) {
    return;
  }
  ImGui::SetTooltip("%.0f %s\n%.3f", static_cast<double>(off.x / paper.size.x) * paper.highest_value,
                    unit.c_str(), static_cast<double>(1 - off.y / paper.size.y) * paper.highest_absorbance);
}

void draw_paper(App& app, const scenario::AskedTest& test) {
  std::vector<std::pair<double, double>> points{{0.0, 0.0}};
  std::optional<double> net;
  double highest_value = 1;
  for (const scenario::AskedLine& line : test.curve) {
    highest_value = std::max(highest_value, line.standard.value_or(0));
    const auto own = number_written(app, line.item);
    if (line.standard && own) {
      points.emplace_back(*line.standard, *own);
    }
    net = line.is_net ? own : net;
  }
  double highest = net.value_or(0);
  for (const auto& point : points) {
    highest = std::max(highest, point.second);
  }
  constexpr double step = 0.25; // The paper grows by quarters, so that its squares keep round figures.
  constexpr double margin_share = 16.0 / 15.0;
  const float em = ImGui::GetFontSize();
  const ImVec2 corner = ImGui::GetCursorScreenPos();
  Paper paper;
  paper.from = {corner.x + em * 2.6F, corner.y + em * 0.4F};
  paper.size = {std::max(em * 8, ImGui::GetContentRegionAvail().x - em * 3.6F), em * 11};
  paper.highest_value = highest_value * margin_share;
  paper.highest_absorbance = std::max(step, std::ceil(highest / step) * step);
  ImDrawList& list = *ImGui::GetWindowDrawList();
  draw_squares(paper, list);
  draw_points(paper, points, net, list);
  tell_place(paper, test.unit);
  ImGui::Dummy({em * 2.6F + paper.size.x, paper.size.y + em * 2.0F});
}

} // namespace

void draw_curve_sheet(App& app, const scenario::AskedTest& test) {
  ImGui::TextWrapped("%s", test.title.c_str());
  ImGui::PushTextWrapPos(0);
  ImGui::TextDisabled(
      "Zero on water; then the blank (urine and saline), each standard and the specimen with the "
      "acid. Write what the photometer shows for each tube.");
  ImGui::PopTextWrapPos();
  bool drawn = false;
  for (const scenario::AskedLine& line : test.curve) {
    if (!line.is_reading && !drawn) {
      drawn = true;
      ImGui::TextWrapped("Your curve (absorbance over %s; the level line is the specimen less its blank)",
                         test.unit.c_str());
      draw_paper(app, test);
    }
    draw_number_line(app, line.item, line.words, line.is_reading ? "0.250" : test.example);
  }
}

} // namespace matula::window
