// A QR code of a link, as SVG. The maker of codes is loaded when the first one is asked for.

/** SVG of the code for `text`, with the least error correction that a phone camera needs. */
export async function codeOf(text) {
  const { default: qrcode } = await import("./vendor/qrcode.mjs");
  const code = qrcode(0, "M");
  code.addData(text);
  code.make();
  return code.createSvgTag({ scalable: true, margin: 4, alt: "QR code of the link" });
}
