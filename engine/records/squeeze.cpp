#include "engine/records/squeeze.hpp"

#include "engine/records/sizes.hpp"
#include "engine/records/trouble.hpp"

#include <array>
#include <memory>
#include <sodium.h>
#include <zstd.h>

namespace matula::records {

namespace {

constexpr int hard = 15; // Of Zstandard's levels: texts are small, and read seldom.

/// As they follow each other in a log; what comes last costs least.
constexpr const char* lines = R"({"t":0.0,"do":"drop_on","paper":"strip-1","reagent":"","drops":1.0}
{"t":0.0,"do":"refractometer","vessel":"specimen","wiped":true}
{"t":0.0,"do":"photometer","vessel":"tube-1","wavelength_nm":620.0,"blank":false}
{"t":0.0,"do":"centrifuge","vessels":["tube-1","tube-2"],"rcf":400.0,"seconds":300.0}
{"t":0.0,"do":"filter","from":"tube-1","to":"tube-2","volume_ml":5.0,"fresh_paper":true}
{"t":0.0,"do":"sulphur","vessel":"tube-1"}
{"t":0.0,"do":"hood","on":true}
{"t":0.0,"do":"bath","temperature_c":100.0,"warming_c_per_min":0.0}
{"t":0.0,"do":"float","vessel":"jar","wiped":true,"spun":true}
{"t":0.0,"do":"lift_float"}
{"t":0.0,"do":"thermometer","vessel":"jar"}
{"t":0.0,"do":"smell","vessel":"specimen"}
{"t":0.0,"do":"record","item":"sg.reading","value":"1.018"}
{"t":0.0,"do":"record","item":"sg.step.temperature","value":"1.019"}
{"t":0.0,"do":"record","item":"sg.corrected","value":"1.019"}
{"t":0.0,"do":"record","item":"sg.zero","value":"1.000"}
{"t":0.0,"do":"record","item":"sg.temperature","value":"22"}
{"t":0.0,"do":"record","item":"colour","value":"yellow"}
{"t":0.0,"do":"record","item":"clarity","value":"clear"}
{"t":0.0,"do":"record","item":"odour","value":"normal"}
{"t":0.0,"do":"record","item":"decision.meaning","value":"protein"}
{"t":0.0,"do":"dip","paper":"strip","vessel":"specimen","seconds":1.0}
{"t":0.0,"do":"blot","paper":"strip-1"}
{"t":0.0,"do":"look_at_paper","paper":"strip-1"}
{"t":0.0,"do":"record","item":"strip_protein.grade","value":"negative"}
{"t":0.0,"do":"record","item":"strip_glucose.grade","value":"trace"}
{"t":0.0,"do":"flame","on":true}
{"t":0.0,"do":"move","vessel":"tube-1","place":"flame","height":0.85,"towards_person":false,"moving":true}
{"t":0.0,"do":"move","vessel":"tube-1","place":"bath","height":0.85,"towards_person":false,"moving":true}
{"t":0.0,"do":"move","vessel":"tube-1","place":"rack","height":0.85,"towards_person":false,"moving":true}
{"t":0.0,"do":"flame","on":false}
{"t":0.0,"do":"discard","vessel":"tube-1","bin":"waste"}
{"matula_sitting":1,"scenario":"","scenario_file":"scenarios/.toml","scenario_hash":"","seed":1,"program":"0.1.0"}
{"t":0.0,"do":"protect","gloves":true,"goggles":true}
{"t":0.0,"do":"mix","vessel":"specimen","manner":"swirl","seconds":5.0}
{"t":0.0,"do":"record","item":"heat.grade","value":"3+"}
{"t":0.0,"do":"record","item":"benedict.grade","value":"1+"}
{"t":0.0,"do":"record","item":"ssa.grade","value":"2+"}
{"t":0.0,"do":"dispense","reagent":"acetic_acid_3","to":"tube-1","volume_ml":0.1,"gently":false}
{"t":0.0,"do":"dispense","reagent":"benedict","to":"tube-2","volume_ml":5.0,"gently":false}
{"t":0.0,"do":"dispense","reagent":"ssa_3","to":"tube-3","volume_ml":3.0,"gently":false}
{"t":0.0,"do":"mix","vessel":"tube-3","manner":"invert","seconds":5.0}
{"t":0.0,"do":"look","vessel":"tube-3","card":"black","light":"daylight","eye_mm":0.0}
{"t":0.0,"do":"pour","from":"specimen","to":"tube-3","volume_ml":3.0,"gently":false}
{"t":0.0,"do":"finish"}
{"t":0.0,"do":"wait","seconds":0.0}
)";

} // namespace

std::string shipped_codebook() {
  return lines;
}

std::string squeeze(std::string_view text, const std::string& codebook) {
  const std::unique_ptr<ZSTD_CCtx, decltype(&ZSTD_freeCCtx)> press(ZSTD_createCCtx(), ZSTD_freeCCtx);
  std::string small(ZSTD_compressBound(text.size()), '\0');
  const std::size_t size = ZSTD_compress_usingDict(press.get(), small.data(), small.size(), text.data(),
                                                   text.size(), codebook.data(), codebook.size(), hard);
  if (ZSTD_isError(size) != 0U) {
    throw Trouble(std::string("A text could not be made small: ") + ZSTD_getErrorName(size));
  }
  small.resize(size);
  return small;
}

std::string unsqueeze(std::string_view small, const std::string& codebook) {
  const auto said = ZSTD_getFrameContentSize(small.data(), small.size());
  if (said == ZSTD_CONTENTSIZE_ERROR || said == ZSTD_CONTENTSIZE_UNKNOWN || said > most_log_bytes) {
    throw Trouble("A stored log is damaged: go on from the last backup.");
  }
  const std::unique_ptr<ZSTD_DCtx, decltype(&ZSTD_freeDCtx)> press(ZSTD_createDCtx(), ZSTD_freeDCtx);
  std::string text(said, '\0');
  const std::size_t size = ZSTD_decompress_usingDict(press.get(), text.data(), text.size(), small.data(),
                                                     small.size(), codebook.data(), codebook.size());
  if (ZSTD_isError(size) != 0U || size != said) {
    throw Trouble("A stored log is damaged: go on from the last backup.");
  }
  return text;
}

std::string content_name(std::string_view text) {
  if (sodium_init() < 0) {
    throw Trouble("The library for fingerprints of files cannot be used on this machine.");
  }
  std::array<unsigned char, 16> sum{};
  crypto_generichash(sum.data(), sum.size(), reinterpret_cast<const unsigned char*>(text.data()), text.size(),
                     nullptr, 0);
  std::string digits(2 * sum.size() + 1, '\0');
  sodium_bin2hex(digits.data(), digits.size(), sum.data(), sum.size());
  digits.pop_back();
  return digits;
}

} // namespace matula::records
