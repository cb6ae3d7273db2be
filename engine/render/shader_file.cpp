#include "engine/render/shader_file.hpp"

#include <fstream>
#include <sstream>

namespace matula::render {

namespace {

tl::expected<std::string, std::string> read(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::ostringstream text;
  text << in.rdbuf();
  if (!in) {
    return tl::unexpected("cannot read " + file.string() +
                          "; set MATULA_ASSETS to the assets folder of the program's source");
  }
  return text.str();
}

} // namespace

tl::expected<Program, std::string> load_program(const std::filesystem::path& assets_folder,
                                                const std::string& vertex, const std::string& fragment,
                                                const std::string& defines) {
  const std::filesystem::path folder = assets_folder / "shaders";
  const auto common = read(folder / "common.glsl");
  const auto vs = read(folder / vertex);
  const auto fs = read(folder / fragment);
  for (const auto* text : {&common, &vs, &fs}) {
    if (!*text) {
      return tl::unexpected(text->error());
    }
  }
  const std::string head = "#version 330 core\n" + defines + *common;
  return Program::link(fragment, head + *vs, head + *fs);
}

} // namespace matula::render
