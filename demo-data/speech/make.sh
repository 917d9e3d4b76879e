#!/bin/sh
# Makes the recordings anew from utterances.tsv with flite (Debian package flite 2.2), voice slt.
cd "$(dirname "$0")" || exit 1
while IFS="$(printf '\t')" read -r name words; do
  flite -voice slt -t "$words" -o "$name.wav" || exit 1
done < utterances.tsv
