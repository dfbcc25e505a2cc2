// For tests: a certificate that vouches for itself, and its key, as files.
#pragma once

#include "server/door.h"

#include <openssl/evp.h>
#include <openssl/pem.h>
#include <openssl/x509.h>

#include <cstdio>
#include <stdexcept>
#include <string>

namespace keenfall::server::testing {

// In that folder, for an hour. The key is on the curve P-256.
inline Certificate made_certificate(const std::string& folder, const std::string& name = "own") {
  const Certificate files{.chain_file = folder + "/" + name + ".pem",
                          .key_file = folder + "/" + name + "-key.pem"};
  EVP_PKEY* const key = EVP_EC_gen("P-256");
  X509* const x509 = X509_new();
  if (key == nullptr || x509 == nullptr) throw std::runtime_error("no certificate can be made");
  constexpr long kHour = 3600;
  ASN1_INTEGER_set(X509_get_serialNumber(x509), 1);
  X509_gmtime_adj(X509_getm_notBefore(x509), -kHour);
  X509_gmtime_adj(X509_getm_notAfter(x509), kHour);
  X509_set_pubkey(x509, key);
  X509_NAME* const about = X509_get_subject_name(x509);
  const auto* const host = reinterpret_cast<const unsigned char*>("bench.example");
  X509_NAME_add_entry_by_txt(about, "CN", MBSTRING_ASC, host, -1, -1, 0);
  X509_set_issuer_name(x509, about);
  X509_sign(x509, key, EVP_sha256());
  std::FILE* const chain_file = std::fopen(files.chain_file.c_str(), "w");
  std::FILE* const key_file = std::fopen(files.key_file.c_str(), "w");
  if (chain_file == nullptr || key_file == nullptr) throw std::runtime_error("cannot be written");
  PEM_write_X509(chain_file, x509);
  PEM_write_PrivateKey(key_file, key, nullptr, nullptr, 0, nullptr, nullptr);
  std::fclose(chain_file);
  std::fclose(key_file);
  X509_free(x509);
  EVP_PKEY_free(key);
  return files;
}

}  // namespace keenfall::server::testing
