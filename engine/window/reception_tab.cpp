#include "engine/window/entries.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <algorithm>
#include <fmt/format.h>

namespace matula::window {

namespace {

using reception::Shown;
using reception::ShownDay;
using Answers = std::vector<std::pair<std::string, std::string>>;

void draw_verdict(App& app) {
  heading("What do you do with it?");
  draw_answers(app, "reception",
               {{"accept", "Accept"}, {"qualify", "Accept, with a qualification"}, {"refuse", "Refuse"}});
}

void draw_faults(App& app, const Shown& shown) {
  heading("What is wrong with it? Tick all you find.");
  for (const auto& [title, faults] : shown.faults) {
    ImGui::TextDisabled("%s", title.c_str());
    for (const auto& [key, wording] : faults) {
      const std::string item = "reception.fault." + key;
      bool ticked = written(app, item) == "yes";
      if (app.widgets.tick(item.c_str(), wording, ticked)) {
        app.record(item, ticked ? "yes" : "no", wording + (ticked ? "" : ": not so"));
      }
    }
  }
}

void draw_counts(App& app, const ShownDay& day) {
  heading("Which voids belong to the day?");
  int number = 0;
  for (const auto& one : day.voids) {
    ImGui::AlignTextToFramePadding();
    ImGui::Text("%d.  %s, %s", ++number, one.at.c_str(), one.volume.c_str());
    ImGui::SameLine(ImGui::GetFontSize() * 13);
    draw_answers(app, fmt::format("day.counts.{}", number), {{"yes", "yes"}, {"no", "no"}});
  }
}

void draw_sums(App& app, const ShownDay& day) {
  heading("The sums, each from your line before");
  if (day.pair) {
    draw_number_line(app, "day.day_ml", "mL in the day bottle");
    draw_number_line(app, "day.night_ml", "mL in the night bottle");
  }
  draw_number_line(app, "day.volume_ml", day.pair ? "mL in both bottles" : "mL in the bottle");
  draw_number_line(app, "day.creatinine_g", "g creatinine in 24 h");
  draw_number_line(app, "day.index_mg_per_kg", "mg creatinine for each kg");
  ImGui::TextWrapped("A %s of %s should pass %s in 24 hours.", day.sex == "male" ? "man" : "woman",
                     day.weight.c_str(), day.index_range.c_str());
  ImGui::TextUnformatted("Is the collection complete?");
  draw_answers(app, "day.complete", {{"yes", "yes"}, {"no", "no"}});
  draw_number_line(app, "day.protein_g", "g protein in 24 h");
  ImGui::TextWrapped("Lines: %s.", day.bands.c_str());
  draw_answers(app, "day.band",
               {{"normal", "normal"}, {"minimal", "minimal"}, {"moderate", "moderate"}, {"heavy", "heavy"}});
}

void draw_posture(App& app) {
  heading("Day and night compared");
  draw_number_line(app, "day.day_protein_g", "g protein in the day bottle");
  draw_number_line(app, "day.night_protein_g", "g protein in the night bottle");
  draw_answers(app, "day.pattern",
               {{"none", "neither loses protein"},
                {"postural", "lost standing, not lying"},
                {"constant", "lost lying down too"}});
}

int sheet_for(const App& app, const std::string& kind) {
  const auto found = std::find_if(app.sheets.begin(), app.sheets.end(), [&](const reception::Sheet& sheet) {
    return std::find(sheet.kinds.begin(), sheet.kinds.end(), kind) != sheet.kinds.end();
  });
  return found == app.sheets.end() ? 0 : static_cast<int>(found - app.sheets.begin());
}

void draw_instructions(App& app, const std::string& kind) {
  heading("What the patient is told");
  std::vector<std::string> titles;
  for (const auto& sheet : app.sheets) {
    titles.push_back(sheet.title);
  }
  if (app.sheet < 0) {
    app.sheet = sheet_for(app, kind);
  }
  ImGui::SetNextItemWidth(-1);
  (void)app.widgets.pick("sheet", "##sheet", titles, app.sheet);
  const reception::Sheet& sheet = app.sheets[static_cast<std::size_t>(app.sheet)];
  for (std::size_t i = 0; i < sheet.steps.size(); ++i) {
    ImGui::TextWrapped("%zu.  %s", i + 1, sheet.steps[i].c_str());
  }
  ImGui::PushTextWrapPos(0);
  ImGui::TextDisabled("Source: %s", sheet.source.c_str());
  ImGui::PopTextWrapPos();
}

} // namespace

void draw_reception_tab(App& app) {
  const Shown& shown = *app.desk->brief().reception;
  if (app.widgets.button("reception.request", "The request in full (Q)")) {
    app.tab = Tab::Request;
    app.focus_panel = true;
  }
  ImGui::TextWrapped("%s", app.desk->brief().title.c_str());
  ImGui::TextWrapped("Form, label and container lie at the left (J and K move them). Compare them "
                     "line by line.");
  draw_verdict(app);
  draw_faults(app, shown);
  if (shown.day) {
    draw_counts(app, *shown.day);
    draw_sums(app, *shown.day);
    if (shown.day->pair) {
      draw_posture(app);
    }
  }
  if (!app.sheets.empty()) {
    draw_instructions(app, shown.kind);
  }
}

} // namespace matula::window
