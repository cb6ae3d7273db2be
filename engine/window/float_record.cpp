#include "engine/window/entries.hpp"
#include "engine/window/flow.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstdlib>

namespace matula::window {

namespace {

using desk::FloatDecision;

const std::vector<std::pair<FloatDecision, std::string>>& decisions() {
  static const std::vector<std::pair<FloatDecision, std::string>> all{
      {FloatDecision::Use, "use as it is"},
      {FloatDecision::Correct, "use, take the error off"},
      {FloatDecision::Discard, "throw away"}};
  return all;
}

const char* const not_kept = "Not written: the folder of the sittings cannot be written to.";

/// As it stands in the record: short.
std::string say(FloatDecision decision) {
  return decision == FloatDecision::Use       ? "as it is"
         : decision == FloatDecision::Correct ? "error off"
                                              : "thrown away";
}

std::string say_error(const std::optional<double>& error) {
  return !error ? "none" : *error == 0 ? "0" : fmt::format("{:+.3f}", *error);
}

std::optional<double> number_in(std::string text) {
  std::replace(text.begin(), text.end(), ',', '.');
  char* end = nullptr;
  const double value = std::strtod(text.c_str(), &end);
  return end == text.c_str() ? std::nullopt : std::optional(value);
}

/// The error to be written and what to do with the float; true when it is to be written down.
bool draw_entry(App& app, const char* name, FloatEntryView& entry) {
  ImGui::AlignTextToFramePadding();
  ImGui::TextUnformatted("Error (+0.001: reads too high)");
  ImGui::SameLine();
  (void)app.widgets.line(fmt::format("{}.error", name).c_str(), entry.error, number_width() * 1.2F);
  for (std::size_t i = 0; i < decisions().size(); ++i) {
    if (i > 0) {
      flow(width_of(decisions()[i].second.c_str()) + ImGui::GetFrameHeight());
    }
    if (app.widgets.choice(fmt::format("{}.decision={}", name, i).c_str(), decisions()[i].second,
                           entry.decision == static_cast<int>(i))) {
      entry.decision = static_cast<int>(i);
    }
  }
  return app.widgets.button(fmt::format("{}.write", name).c_str(), "Write it down", entry.decision >= 0);
}

const char* right_or_wrong(bool right) {
  return right ? "right" : "wrong";
}

void draw_row(const desk::FloatLine& line) {
  ImGui::TableNextRow();
  const auto cell = [](const std::string& words) {
    ImGui::TableNextColumn();
    ImGui::TextWrapped("%s", words.c_str());
  };
  cell(fmt::format("{}", line.day));
  cell(fmt::format("{:g} °C", line.water_c));
  cell(fmt::format("{:.4f}", line.reading));
  if (!line.written) {
    cell("");
    cell("");
    return;
  }
  cell(fmt::format("{}: {}", say_error(line.error), right_or_wrong(line.error_right)));
  cell(fmt::format("{}: {}", say(line.decision), right_or_wrong(line.decision_right)));
}

void draw_record(const desk::FloatRecord& record) {
  const float em = ImGui::GetFontSize();
  if (!ImGui::BeginTable("float record", 5, ImGuiTableFlags_BordersInnerH | ImGuiTableFlags_SizingFixedFit)) {
    return;
  }
  ImGui::TableSetupColumn("Day", ImGuiTableColumnFlags_WidthFixed, em * 1.8F);
  ImGui::TableSetupColumn("Water", ImGuiTableColumnFlags_WidthFixed, em * 2.7F);
  ImGui::TableSetupColumn("Float at", ImGuiTableColumnFlags_WidthFixed, em * 3.4F);
  ImGui::TableSetupColumn("Error", ImGuiTableColumnFlags_WidthFixed, em * 5.6F);
  ImGui::TableSetupColumn("Decision", ImGuiTableColumnFlags_WidthStretch);
  ImGui::TableHeadersRow();
  for (const desk::FloatLine& line : record.lines) {
    draw_row(line);
  }
  ImGui::EndTable();
}

void draw_series(App& app, FloatView& view) {
  const std::vector<std::string> titles = view.book->titles();
  ImGui::SetNextItemWidth(ImGui::GetContentRegionAvail().x);
  if (app.widgets.pick("float.series", "##float series", titles, view.series)) {
    view.words.clear();
  }
  const auto which = static_cast<std::size_t>(view.series);
  const desk::FloatRecord record = view.book->record(which);
  ImGui::TextUnformatted(record.story.c_str());
  draw_record(record);
  if (!record.closed) {
    ImGui::Text("Day %d: water at %g °C, float made for %g °C.", record.lines.back().day,
                record.lines.back().water_c, record.calibration_c);
    if (draw_entry(app, "float", view.today)) {
      if (!view.book->write(which, number_in(view.today.error),
                            static_cast<FloatDecision>(view.today.decision))) {
        view.words = not_kept;
        return;
      }
      view.words =
          view.book->record(which).lines[static_cast<std::size_t>(record.lines.back().day) - 1].words;
      view.today = {};
    }
  }
  app.widgets.tell("float.words", view.words);
  ImGui::TextUnformatted(view.words.c_str());
  if (record.closed) {
    ImGui::Text("The record is closed: %d of %d right.", record.earned, record.possible);
    app.widgets.tell("float.earned", fmt::format("{} of {}", record.earned, record.possible));
    ImGui::TextUnformatted(record.remedy.c_str());
    if (app.widgets.button("float.again", "Begin this float again")) {
      view.words = view.book->clear(which) ? "" : not_kept;
    }
  }
}

/// The float of the case at hand: its reading in water is the one on the worksheet.
void draw_bench_float(App& app, FloatView& view) {
  if (!app.desk || !app.desk->brief().asks_gravity) {
    return;
  }
  heading("Today's float, on your bench");
  const auto reading = number_in(written(app, "sg.zero"));
  if (!reading) {
    ImGui::TextUnformatted("Float it in distilled water (Do) and write the reading on the worksheet first.");
    return;
  }
  ImGui::Text("In water it read %.4f; it was made for %.4g °C. Water at", *reading,
              app.desk->brief().calibration_c);
  ImGui::SameLine();
  app.widgets.number("float.bench.water", view.water_c, 5, 40, number_width(), "%.1f");
  ImGui::SameLine();
  ImGui::TextUnformatted("°C");
  if (draw_entry(app, "float.bench", view.bench)) {
    const auto line = view.book->judge_on_bench(*reading, view.water_c, app.desk->brief().calibration_c,
                                                number_in(view.bench.error),
                                                static_cast<FloatDecision>(view.bench.decision));
    view.bench_words = line.words;
  }
  app.widgets.tell("float.bench.words", view.bench_words);
  ImGui::TextUnformatted(view.bench_words.c_str());
}

} // namespace

void draw_float_record(App& app) {
  FloatView& view = app.floats;
  if (!view.book) {
    auto loaded = desk::FloatBook::load(app.ground, app.options.sittings / "float.record");
    if (!loaded) {
      ImGui::TextUnformatted(scenario::to_text(loaded.error()).c_str());
      return;
    }
    view.book.emplace(std::move(*loaded));
  }
  ImGui::TextUnformatted(
      "Every morning the urinometer stands in distilled water. What it is wrong by is written down "
      "and taken off every reading of the day; a float off by more than 0.002 is thrown away.");
  draw_bench_float(app, view);
  heading("The record of a float");
  draw_series(app, view);
}

} // namespace matula::window
