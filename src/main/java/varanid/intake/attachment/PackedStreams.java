package varanid.intake.attachment;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.HashSet;
import java.util.Set;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * A first look at a PDF as a heap of bytes, before anything reads it as a document: how much its packed streams unpack
 * to, and whether a name that says that something acts stands anywhere in it. Whatever reader a vet has, and whatever
 * trick with the document's own tables, its objects are somewhere in these bytes.
 *
 * <p>Streams are packed with Flate in nearly every report, and in older ones that again in letters. Other packing of
 * unbounded gain (LZW, run lengths, Flate twice) is refused: what it hides or how large it grows is then unknown.
 */
final class PackedStreams {

    /** A page of a scanner, 600 dots to the inch in colours, is about 100 MB. */
    static final int LARGEST_STREAM = 128 * 1024 * 1024;

    static final int LARGEST_SUM = 512 * 1024 * 1024;

    private static final Set<String> FLATE = Set.of("FlateDecode", "Fl");
    private static final Set<String> BASE_85 = Set.of("ASCII85Decode", "A85");
    private static final Set<String> HEXADECIMAL = Set.of("ASCIIHexDecode", "AHx");
    private static final Set<String> REFUSED = Set.of("LZWDecode", "LZW", "RunLengthDecode", "RL", "Crypt");
    private static final int LONGEST_NAME = 64;
    private static final byte[] STREAM = "stream".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] END = "endstream".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] END_OF_OBJECT = "endobj".getBytes(StandardCharsets.US_ASCII);
    private static final int MOST_STREAMS = 100_000;
    private static final Refused UNUSUAL = new Refused(
            "is packed in an unusual way, so that what is in it cannot be checked",
            "the same report printed or exported anew as PDF");

    private final byte[] file;
    private final Set<String> forbidden;
    private final Set<String> found = new HashSet<>();
    private long unpacked;

    private PackedStreams(byte[] file, Set<String> forbidden) {
        this.file = file;
        this.forbidden = forbidden;
    }

    /**
     * @param forbidden names that must not be in it
     * @return those of them that are in it
     * @throws Refused where it unpacks to more than is reasonable, or cannot be looked through
     */
    static Set<String> look(byte[] file, Set<String> forbidden) throws Refused {
        PackedStreams streams = new PackedStreams(file, forbidden);
        streams.look();
        return streams.found;
    }

    private void look() throws Refused {
        Names names = new Names();
        int flates = 0;
        boolean letters = false;
        boolean hexadecimal = false;
        boolean filtered = false;
        boolean unknown = false;
        int streams = 0;
        for (int i = 0; i < file.length; i++) {
            String name = names.take(file[i]);
            if (!name.isEmpty()) {
                flates += FLATE.contains(name) ? 1 : 0;
                letters |= BASE_85.contains(name);
                hexadecimal |= HEXADECIMAL.contains(name);
                unknown |= REFUSED.contains(name);
                filtered |= name.equals("Filter") || name.equals("F");
            }
            if (isAt(END, i) || isAt(END_OF_OBJECT, i)) {
                flates = 0;
                letters = false;
                hexadecimal = false;
                unknown = false;
                filtered = false;
            } else if (isAt(STREAM, i) && !isAt(END, i - 3)) {
                streams++;
                if (unknown || flates > 1 || letters && hexadecimal || streams > MOST_STREAMS) {
                    throw UNUSUAL;
                }
                int start = skipLineEnd(i + STREAM.length);
                if (letters || hexadecimal) {
                    byte[] plain = letters ? fromBase85(start) : fromHexadecimal(start);
                    count(plain.length);
                    inflate(plain, 0);
                } else if (flates == 1 || filtered) {
                    inflate(file, start);
                }
            }
        }
    }

    private int skipLineEnd(int from) {
        int at = from;
        while (at < file.length && (file[at] == ' ' || file[at] == '\t')) {
            at++;
        }
        if (at < file.length && file[at] == '\r') {
            at++;
        }
        return at < file.length && file[at] == '\n' ? at + 1 : at;
    }

    private boolean isAt(byte[] word, int at) {
        if (at < 0 || at + word.length > file.length || file[at] != word[0]) {
            return false;
        }
        for (int i = 1; i < word.length; i++) {
            if (file[at + i] != word[i]) {
                return false;
            }
        }
        return true;
    }

    /** As far as it goes: what is not packed this way ends at once. */
    private void inflate(byte[] packed, int start) throws Refused {
        Inflater inflater = new Inflater(true);
        try {
            int body = start + 2;
            if (body >= packed.length) {
                return;
            }
            inflater.setInput(packed, body, packed.length - body);
            Names names = new Names();
            byte[] piece = new byte[8192];
            long length = 0;
            while (!inflater.finished()) {
                int count = inflater.inflate(piece);
                if (count == 0) {
                    return;
                }
                length += count;
                count(count);
                if (length > LARGEST_STREAM) {
                    throw tooLarge(LARGEST_STREAM);
                }
                for (int i = 0; i < count; i++) {
                    names.take(piece[i]);
                }
            }
            names.take((byte) ' ');
        } catch (DataFormatException e) {
            // Not packed, or broken from here on: no reader gets further.
        } finally {
            inflater.end();
        }
    }

    private void count(int bytes) throws Refused {
        unpacked += bytes;
        if (unpacked > LARGEST_SUM) {
            throw tooLarge(LARGEST_SUM);
        }
    }

    private static Refused tooLarge(int most) {
        return new Refused("unpacks to more than " + most + " bytes", "the same report with fewer or coarser pictures");
    }

    private byte[] fromHexadecimal(int start) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        int high = -1;
        for (int i = start; i < file.length && file[i] != '>'; i++) {
            int digit = Character.digit(file[i], 16);
            if (digit >= 0) {
                if (high < 0) {
                    high = digit;
                } else {
                    bytes.write(high << 4 | digit);
                    high = -1;
                }
            }
        }
        return bytes.toByteArray();
    }

    private byte[] fromBase85(int start) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        long group = 0;
        int digits = 0;
        for (int i = start; i < file.length && file[i] != '~'; i++) {
            if (file[i] == 'z' && digits == 0) {
                bytes.write(new byte[4], 0, 4);
            } else if (file[i] >= '!' && file[i] <= 'u') {
                group = group * 85 + (file[i] - '!');
                digits++;
                if (digits == 5) {
                    write(bytes, group, 4);
                    group = 0;
                    digits = 0;
                }
            }
        }
        if (digits > 1) {
            for (int i = digits; i < 5; i++) {
                group = group * 85 + 84;
            }
            write(bytes, group, digits - 1);
        }
        return bytes.toByteArray();
    }

    private static void write(ByteArrayOutputStream bytes, long group, int count) {
        for (int i = 0; i < count; i++) {
            bytes.write((int) (group >> 24 - 8 * i));
        }
    }

    /** Finds names as they go by: a slash, and what follows up to a delimiter; {@code #4A} in it is a letter too. */
    private final class Names {

        private final StringBuilder name = new StringBuilder();
        private boolean within;

        /** @return a name that this byte ended, else an empty text */
        String take(byte next) {
            String ended = "";
            boolean delimits = next <= ' ' && next >= 0 || "()<>[]{}/%".indexOf(next) >= 0;
            if (within && (delimits || name.length() > LONGEST_NAME * 3)) {
                ended = unescaped();
                if (forbidden.contains(ended)) {
                    found.add(ended);
                }
                within = false;
                name.setLength(0);
            }
            if (next == '/') {
                within = true;
            } else if (within) {
                name.append((char) (next & 0xFF));
            }
            return ended;
        }

        private String unescaped() {
            if (name.indexOf("#") < 0) {
                return name.toString();
            }
            StringBuilder plain = new StringBuilder();
            for (int i = 0; i < name.length(); i++) {
                if (name.charAt(i) == '#' && isHexadecimal(i + 1) && isHexadecimal(i + 2)) {
                    plain.append((char) Integer.parseInt(name, i + 1, i + 3, 16));
                    i += 2;
                } else {
                    plain.append(name.charAt(i));
                }
            }
            return plain.toString();
        }

        private boolean isHexadecimal(int at) {
            return at < name.length() && Character.digit(name.charAt(at), 16) >= 0;
        }
    }
}
