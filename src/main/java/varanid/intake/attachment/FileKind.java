package varanid.intake.attachment;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/** What a file is by its first bytes. */
enum FileKind {
    JPEG,
    PNG,
    PDF;

    static final String RIGHT = "a JPEG or PNG picture, or a PDF";

    private static final String AS_JPEG = "the same picture as JPEG: choose JPEG or “most compatible” when sharing or"
            + " exporting it, or send a screenshot of it";

    private static final byte[] PNG_SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

    private static final List<String> HEIF_BRANDS =
            List.of("heic", "heix", "hevc", "hevx", "heim", "heis", "mif1", "msf1", "avif", "avis");

    /** @throws Refused for every other kind */
    static FileKind of(byte[] file) throws Refused {
        if (starts(file, 0, new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF})) {
            return JPEG;
        } else if (starts(file, 0, PNG_SIGNATURE)) {
            return PNG;
        } else if (starts(file, 0, ascii("%PDF-"))) {
            return PDF;
        } else if (file.length == 0) {
            throw new Refused("is empty", RIGHT);
        } else if (starts(file, 0, ascii("RIFF")) && starts(file, 8, ascii("WEBP"))) {
            throw new Refused("is a WebP picture", AS_JPEG);
        } else if (starts(file, 4, ascii("ftyp")) && file.length >= 12) {
            String brand = new String(file, 8, 4, StandardCharsets.ISO_8859_1).toLowerCase(Locale.ROOT);
            throw HEIF_BRANDS.contains(brand)
                    ? new Refused("is a HEIC or AVIF picture, as some telephones make them", AS_JPEG)
                    : new Refused("is a video", "a picture of what it shows; keep the video and show it to the vet");
        } else if (starts(file, 0, ascii("GIF8"))) {
            throw new Refused("is a GIF", AS_JPEG);
        } else if (starts(file, 0, ascii("II*\0")) || starts(file, 0, ascii("MM\0*"))) {
            throw new Refused("is a TIFF or a camera's raw picture", AS_JPEG);
        } else if (starts(file, 0, ascii("BM"))) {
            throw new Refused("is a BMP", AS_JPEG);
        }
        throw new Refused("is neither JPEG nor PNG nor PDF, whatever it is called", RIGHT);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static boolean starts(byte[] file, int at, byte[] with) {
        return file.length >= at + with.length && Arrays.equals(file, at, at + with.length, with, 0, with.length);
    }
}
