#include "notebook/digest.h"

#include "base/require.h"

#include <openssl/evp.h>

namespace keenfall::notebook {

struct Sha256::Context {
  EVP_MD_CTX* evp = EVP_MD_CTX_new();

  Context() = default;
  Context(const Context&) = delete;
  Context& operator=(const Context&) = delete;
  Context(Context&&) = delete;
  Context& operator=(Context&&) = delete;
  ~Context() { EVP_MD_CTX_free(evp); }
};

Sha256::Sha256() : context_(std::make_unique<Context>()) { begin(); }

Sha256::~Sha256() = default;

void Sha256::begin() {
  // Looked up once: looking it up takes longer than a short digest.
  static const EVP_MD* const kSha256 = EVP_MD_fetch(nullptr, "SHA256", nullptr);
  base::require(EVP_DigestInit_ex(context_->evp, kSha256, nullptr) == 1, "the library has SHA-256");
}

void Sha256::add(std::span<const std::uint8_t> bytes) {
  base::require(EVP_DigestUpdate(context_->evp, bytes.data(), bytes.size()) == 1,
                "bytes are added to a digest that has begun");
}

void Sha256::add(std::string_view bytes) {
  base::require(EVP_DigestUpdate(context_->evp, bytes.data(), bytes.size()) == 1,
                "bytes are added to a digest that has begun");
}

Digest Sha256::finish() {
  Digest digest{};
  base::require(EVP_DigestFinal_ex(context_->evp, digest.data(), nullptr) == 1,
                "a digest is finished once");
  begin();
  return digest;
}

Digest sha256_of(std::string_view bytes) {
  Sha256 sha;
  sha.add(bytes);
  return sha.finish();
}

std::string in_hex(std::span<const std::uint8_t> bytes) {
  constexpr std::string_view kDigits = "0123456789abcdef";
  std::string text;
  for (const std::uint8_t byte : bytes) {
    text += kDigits[byte >> 4U];
    text += kDigits[byte & 15U];
  }
  return text;
}

}  // namespace keenfall::notebook
