#include "engine/command/report.hpp"

#include <nlohmann/json.hpp>

namespace matula::command {

using nlohmann::json;

json to_json(const std::vector<SeenThing>& things) {
  json all = json::array();
  for (const auto& thing : things) {
    json one = {{"name", thing.name}, {"words", thing.words}};
    if (!thing.colour_hex.empty()) {
      one["colour"] = thing.colour_hex;
      one["print_contrast"] = thing.print_contrast;
    }
    all.push_back(std::move(one));
  }
  return all;
}

} // namespace matula::command
