#include "engine/window/entries.hpp"
#include "engine/window/group.hpp"
#include "engine/window/panels.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace matula::window {

namespace {

/// A row of words of which one is written down; pressing another corrects it.
void draw_words(App& app, const std::string& item, const std::string& line,
                const std::vector<std::string>& words) {
  std::vector<std::pair<std::string, std::string>> answers;
  answers.reserve(words.size());
  for (const std::string& word : words) {
    answers.emplace_back(word, word);
  }
  draw_answers(app, item, answers, line + ": ");
}

void draw_look(App& app) {
  heading("The specimen");
  ImGui::TextUnformatted("Colour");
  draw_words(app, "colour", "colour", app.ground.colour_words());
  ImGui::TextUnformatted("Clarity");
  draw_words(app, "clarity", "clarity", {"clear", "hazy", "cloudy", "turbid"});
  ImGui::TextUnformatted("Odour");
  std::vector<std::string> odours = app.ground.odour_words();
  odours.insert(odours.begin(), "normal");
  draw_words(app, "odour", "odour", odours);
}

void draw_gravity(App& app) {
  const scenario::Brief& brief = app.desk->brief();
  heading("Specific gravity");
  draw_number_line(app, "sg.zero", "reading in distilled water", "1.000");
  draw_number_line(app, "sg.temperature", "°C of the specimen", "22");
  draw_number_line(app, "sg.reading", "reading in the specimen", "1.018");
  ImGui::PushTextWrapPos(0);
  ImGui::TextDisabled(
      "Written rule of this laboratory: float made for %.4g °C; 0.001 for every %.3g °C; protein %.3f and "
      "glucose %.3f for each g/dL. Write the gravity after each step.",
      brief.calibration_c, brief.per_degrees_c, brief.protein_per_g_dl, brief.glucose_per_g_dl);
  ImGui::PopTextWrapPos();
  draw_number_line(app, "sg.step.zero", "after the float's own error", "1.018");
  draw_number_line(app, "sg.step.temperature", "after temperature", "1.019");
  draw_number_line(app, "sg.step.protein", "after protein", "1.019");
  draw_number_line(app, "sg.step.glucose", "after glucose", "1.019");
  draw_number_line(app, "sg.corrected", "reported", "1.019");
}

void draw_questions(App& app) {
  for (const scenario::Question& question : app.desk->brief().questions) {
    ImGui::Spacing();
    ImGui::TextWrapped("%s", question.prompt.c_str());
    const std::string item = "decision." + question.key;
    const std::string now = written(app, item);
    for (const auto& [key, wording] : question.options) {
      const std::string name = fmt::format("{}={}", item, key);
      if (app.widgets.choice(name.c_str(), "##" + key, now == key)) {
        app.record(item, key, wording);
      }
      ImGui::SameLine();
      ImGui::TextWrapped("%s", wording.c_str());
      if (ImGui::IsItemClicked()) {
        app.record(item, key, wording);
      }
    }
  }
}

/// The words of the grade table, at hand while practising.
void draw_grade_table(App& app, const scenario::AskedTest& test) {
  if (is_examination(app)) {
    return;
  }
  const std::string key = test.item.substr(0, test.item.find('.'));
  for (const HelpTopic& topic : app.help) {
    const bool of_test = std::find(topic.tests.begin(), topic.tests.end(), key) != topic.tests.end();
    if (!of_test || !app.widgets.section(("grades." + key).c_str(), "What each looks like")) {
      continue;
    }
    for (const std::string& grade : topic.grades) {
      point(grade);
    }
  }
}

void draw_result(App& app, const scenario::AskedTest& test) {
  ImGui::Spacing();
  if (!test.curve.empty()) {
    draw_curve_sheet(app, test);
    return;
  }
  if (test.words.empty()) {
    draw_number_line(app, test.item, test.unit.empty() ? test.title : test.title + ", " + test.unit,
                     test.example.c_str());
    return;
  }
  ImGui::TextUnformatted(test.title.c_str());
  draw_words(app, test.item, test.title, test.words);
  draw_grade_table(app, test);
}

} // namespace

void draw_worksheet_tab(App& app) {
  const scenario::Brief& brief = app.desk->brief();
  if (brief.asks_look) {
    draw_look(app);
  }
  if (brief.asks_gravity) {
    draw_gravity(app);
  }
  if (!brief.tests.empty()) {
    heading("Tests");
  }
  for (const scenario::AskedTest& test : brief.tests) {
    draw_result(app, test);
  }
  heading("Conclusions");
  draw_questions(app);
}

} // namespace matula::window
