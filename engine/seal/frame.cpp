#include "engine/seal/frame.hpp"

#include "engine/seal/names.hpp"
#include "engine/strict/disk.hpp"

#include <array>
#include <fstream>
#include <string_view>
#include <system_error>

namespace matula::seal {

namespace {

struct KindWords {
  Kind kind;
  std::string_view letters;
  const char* words;
};

constexpr std::array<KindWords, 5> kinds{{{Kind::Keys, "MATULA.K", "an instructor's locked keys"},
                                          {Kind::Device, "MATULA.D", "a learner's device key"},
                                          {Kind::Pack, "MATULA.P", "an examination pack"},
                                          {Kind::Result, "MATULA.R", "a sealed result"},
                                          {Kind::Release, "MATULA.S", "a released score sheet"}}};

const KindWords& words_of(Kind kind) {
  return kinds[static_cast<std::size_t>(kind)];
}

bool begins(View file, std::string_view letters) {
  return file.size() >= letters.size() && text_of(file.first(letters.size())) == letters;
}

/// What a file of the wrong kind seems to be.
std::string guess(View file) {
  if (file.empty()) {
    return "an empty file";
  }
  for (const auto& one : kinds) {
    if (begins(file, one.letters)) {
      return one.words;
    }
  }
  if (begins(file, "{\"matula_sitting\"")) {
    return "the log of a sitting, not sealed";
  }
  return is_text(text_of(file)) ? "a text file" : "a file of another program, or a damaged one";
}

} // namespace

bool begins_as(View file, Kind kind) {
  return begins(file, words_of(kind).letters);
}

Bytes head_of(Kind kind, const Bytes& header) {
  ByteWriter head;
  head.raw(view_of(words_of(kind).letters)).u16(format_version);
  return head.u32(static_cast<std::uint32_t>(header.size())).raw(header).take();
}

Maybe<Frame> read_frame(View file, Kind kind, const std::string& name) {
  const KindWords& wanted = words_of(kind);
  if (!begins_as(file, kind)) {
    return refuse(name, guess(file), wanted.words);
  }
  ByteReader reader(file);
  (void)reader.raw(wanted.letters.size());
  const std::uint16_t version = reader.u16();
  if (reader.good() && version != format_version) {
    return refuse(name, std::string(wanted.words) + " in version " + std::to_string(version),
                  "version " + std::to_string(format_version) +
                      ", which this program knows; use the program it was made with");
  }
  const std::uint32_t size = reader.u32();
  if (reader.good() && size > most_header_bytes) {
    return refuse(name, "a header said to be " + std::to_string(size) + " bytes long",
                  "at most " + std::to_string(most_header_bytes) + "; fetch the file again");
  }
  const View header = reader.raw(size);
  if (!reader.good()) {
    return refuse(name,
                  std::string(wanted.words) + " that is cut off in its header (" +
                      std::to_string(file.size()) + " bytes)",
                  "the whole file; fetch it again");
  }
  return Frame{file.first(reader.at()), header, file.subspan(reader.at())};
}

Maybe<Bytes> read_bytes(const std::filesystem::path& file, const std::string& wanted) {
  std::error_code failed;
  const auto size = std::filesystem::file_size(file, failed);
  if (failed || !std::filesystem::is_regular_file(file, failed)) {
    return refuse(file.string(), "no readable file", wanted + " at this place");
  }
  if (size > most_file_bytes) {
    return refuse(file.string(), "a file of " + std::to_string(size >> 20U) + " MiB",
                  wanted + ", at most " + std::to_string(most_file_bytes >> 20U) + " MiB");
  }
  std::ifstream in(file, std::ios::binary);
  Bytes bytes(size);
  in.read(reinterpret_cast<char*>(bytes.data()), static_cast<std::streamsize>(size));
  if (!in) {
    return refuse(file.string(), "a file that cannot be read", wanted + " that may be read");
  }
  return bytes;
}

scenario::Problems write_bytes(const std::filesystem::path& file, View bytes, bool own) {
  const std::string_view words(reinterpret_cast<const char*>(bytes.data()), bytes.size());
  const std::string why = strict::write_whole(file, words, own);
  return why.empty() ? scenario::Problems{}
                     : problem(file.string(), "a file that cannot be written (" + why + ")",
                               "a folder that can be written, with room on its disk");
}

} // namespace matula::seal
