#include "engine/render/lettering.hpp"

#include <fmt/format.h>
#include <stb/stb_truetype.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <fstream>
#include <iterator>

namespace matula::render {

namespace {

constexpr std::array<const char*, 2> font_files{"/usr/share/fonts/truetype/noto/NotoSans-Regular.ttf",
                                                "/usr/share/fonts/noto/NotoSans-Regular.ttf"};

/// Code points of UTF-8 text; a malformed byte is skipped.
std::vector<int> code_points(const std::string& text) {
  std::vector<int> out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const unsigned char c = static_cast<unsigned char>(text[i]);
    const int more = c >= 0xF0 ? 3 : c >= 0xE0 ? 2 : c >= 0xC0 ? 1 : 0;
    int code = more == 0 ? c : c & (0x3F >> more);
    for (int k = 0; k < more && i + 1 < text.size(); ++k) {
      code = (code << 6) | (static_cast<unsigned char>(text[++i]) & 0x3F);
    }
    if (c < 0x80 || c >= 0xC0) {
      out.push_back(code);
    }
  }
  return out;
}

stbtt_fontinfo font_of(const std::vector<std::uint8_t>& bytes) {
  stbtt_fontinfo info{};
  stbtt_InitFont(&info, bytes.data(), 0);
  return info;
}

void darken(Canvas& canvas, int x, int y, double darkness) {
  if (x < 0 || y < 0 || x >= canvas.width || y >= canvas.height) {
    return;
  }
  std::uint8_t& p = canvas.ink[static_cast<std::size_t>(y) * static_cast<std::size_t>(canvas.width) +
                               static_cast<std::size_t>(x)];
  p = static_cast<std::uint8_t>(std::lround(p * (1 - std::clamp(darkness, 0.0, 1.0))));
}

} // namespace

void Canvas::bar(double x, double y, double w, double h, double darkness) {
  const int left = static_cast<int>(std::floor(x));
  const int top = static_cast<int>(std::floor(y));
  for (int py = top; py < y + h; ++py) {
    const double cover_y = std::min(py + 1.0, y + h) - std::max<double>(py, y);
    for (int px = left; px < x + w; ++px) {
      const double cover_x = std::min(px + 1.0, x + w) - std::max<double>(px, x);
      darken(*this, px, py, darkness * cover_x * cover_y);
    }
  }
}

tl::expected<Lettering, std::string> Lettering::load() {
  for (const char* file : font_files) {
    std::ifstream in(file, std::ios::binary);
    if (in) {
      Lettering made;
      made.font_.assign(std::istreambuf_iterator<char>(in), {});
      if (stbtt_GetNumberOfFonts(made.font_.data()) >= 1) {
        return made;
      }
    }
  }
  return tl::unexpected(std::string("no font at ") + font_files[0] + "; install fonts-noto-core");
}

double Lettering::width(const std::string& line, double size_px) const {
  const stbtt_fontinfo font = font_of(font_);
  const float scale = stbtt_ScaleForPixelHeight(&font, static_cast<float>(size_px));
  double x = 0;
  for (const int code : code_points(line)) {
    int advance = 0;
    stbtt_GetCodepointHMetrics(&font, code, &advance, nullptr);
    x += advance * static_cast<double>(scale);
  }
  return x;
}

void Lettering::print(Canvas& canvas, const std::string& line, double x, double y, double size_px) const {
  const stbtt_fontinfo font = font_of(font_);
  const float scale = stbtt_ScaleForPixelHeight(&font, static_cast<float>(size_px));
  int ascent = 0;
  stbtt_GetFontVMetrics(&font, &ascent, nullptr, nullptr);
  const double baseline = y + ascent * static_cast<double>(scale);
  for (const int code : code_points(line)) {
    const float shift = static_cast<float>(x - std::floor(x));
    int w = 0;
    int h = 0;
    int off_x = 0;
    int off_y = 0;
    unsigned char* glyph =
        stbtt_GetCodepointBitmapSubpixel(&font, scale, scale, shift, 0, code, &w, &h, &off_x, &off_y);
    for (int row = 0; row < h; ++row) {
      for (int col = 0; col < w; ++col) {
        darken(canvas, static_cast<int>(std::floor(x)) + off_x + col,
               static_cast<int>(std::lround(baseline)) + off_y + row, glyph[row * w + col] / 255.0);
      }
    }
    stbtt_FreeBitmap(glyph, nullptr);
    int advance = 0;
    stbtt_GetCodepointHMetrics(&font, code, &advance, nullptr);
    x += advance * static_cast<double>(scale);
  }
}

Canvas printed_card(const Lettering& lettering) {
  const double k = print_px_per_mm;
  Canvas card(static_cast<int>(print_width_mm * k), static_cast<int>(print_height_mm * k));
  // One period: a heavy bar, a line of words, three fine lines, a line of smaller words.
  const std::array<const char*, 4> words{"hold the tube to the light and read this line 0123456789",
                                         "seven grey stones lie under the clear water of the well",
                                         "turn the tube slowly and look through it at the letters",
                                         "what is plain to read is clear and what is lost is not"};
  int line = 0;
  const auto row = [&](double top_mm, double height_mm) {
    const double size = height_mm * k;
    const std::string text = words[static_cast<std::size_t>(line % 4)];
    const double wide = lettering.width(text, size);
    lettering.print(card, text, (card.width - wide) / 2, top_mm * k, size);
    ++line;
  };
  constexpr int period_mm = 20;
  for (int top = 2; top < static_cast<int>(print_height_mm); top += period_mm) {
    card.bar(0, top * k, card.width, 2.2 * k);
    row(top + 3.0, 4.6);
    card.bar(0, (top + 9.0) * k, card.width, 0.5 * k);
    card.bar(0, (top + 10.4) * k, card.width, 0.5 * k);
    card.bar(0, (top + 11.8) * k, card.width, 0.5 * k);
    row(top + 13.4, 3.4);
    card.bar(0, (top + 17.9) * k, card.width, 0.9 * k);
  }
  return card;
}

double mark_depth_mm(double reading, double length_mm, double end) {
  return length_mm * (1 - 1 / reading) / (1 - 1 / end);
}

Canvas float_scale(const Lettering& lettering, double length_mm, double width_mm, double end) {
  const double k = scale_px_per_mm;
  Canvas paper(static_cast<int>(std::ceil(width_mm * k)),
               static_cast<int>(std::ceil((length_mm + 2 * scale_margin_mm) * k)));
  const int last = static_cast<int>(std::lround((end - 1) * 1000));
  const double step_px = length_mm / last * k;
  for (int i = 0; i <= last; ++i) {
    const double y = (scale_margin_mm + mark_depth_mm(1 + i / 1000.0, length_mm, end)) * k;
    // Only the middle of the half round that faces the eye is plain to read.
    const double reach = i % 10 == 0 ? 0.80 : i % 5 == 0 ? 0.36 : 0.24;
    const double thick = i % 10 == 0 ? 0.16 : 0.11;
    paper.bar(0.12 * width_mm * k, y - thick * k / 2, reach * width_mm * k, thick * k);
    if (i % 10 == 0) {
      const std::string text = i == 0 ? "1.000" : fmt::format("{}", i);
      const double size = std::min(step_px * 3.9, width_mm * k * (i == 0 ? 0.32 : 0.50));
      const double wide = lettering.width(text, size);
      lettering.print(paper, text, 0.86 * width_mm * k - wide, y - size * (i == 0 ? 1.0 : 1.02), size);
    }
  }
  return paper;
}

} // namespace matula::render
