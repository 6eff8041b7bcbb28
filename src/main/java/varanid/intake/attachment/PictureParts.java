package varanid.intake.attachment;

import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * What a picture's outer structure says, read without unpacking anything: how large it claims to be, how it was held, and
 * that it goes on to its end. What comes after the end is nobody's business: it is not kept.
 *
 * @param width in pixels, the largest that any part of it claims
 * @param height the same
 */
record PictureParts(int width, int height, Orientation orientation) {

    private static final String WHOLE = "the whole file: it may not have been copied or sent to its end";

    private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);
    private static final int PNG_SIGNATURE_BYTES = 8;
    private static final int PNG_CHECKSUM_BYTES = 4;

    static PictureParts of(FileKind kind, byte[] file) throws Refused {
        try {
            return kind == FileKind.JPEG ? ofJpeg(ByteBuffer.wrap(file)) : ofPng(ByteBuffer.wrap(file));
        } catch (BufferUnderflowException
                | IllegalArgumentException
                | IndexOutOfBoundsException
                | ArithmeticException e) {
            throw new Refused("ends before the picture does", WHOLE);
        }
    }

    private static PictureParts ofJpeg(ByteBuffer file) throws Refused {
        int width = 0;
        int height = 0;
        Orientation orientation = Orientation.UPRIGHT;
        file.position(2);
        while (true) {
            if (unsigned(file.get()) != 0xFF) {
                throw new Refused("is no readable JPEG", FileKind.RIGHT);
            }
            int marker = unsigned(file.get());
            while (marker == 0xFF) {
                marker = unsigned(file.get());
            }
            if (marker == 0xD9) {
                return new PictureParts(width, height, orientation);
            } else if (marker == 0x01 || marker >= 0xD0 && marker <= 0xD8) {
                continue;
            }
            int next = file.position() + Short.toUnsignedInt(file.getShort());
            if (isFrame(marker)) {
                height = Math.max(height, Short.toUnsignedInt(file.getShort(file.position() + 1)));
                width = Math.max(width, Short.toUnsignedInt(file.getShort(file.position() + 3)));
            } else if (marker == 0xE1 && orientation.equals(Orientation.UPRIGHT)) {
                orientation = exif(file.slice(file.position(), next - file.position()));
            }
            file.position(next);
            if (marker == 0xDA) {
                skipScan(file);
            }
        }
    }

    /** A start of frame: C0 to CF, but for the tables of Huffman and arithmetic coding and one that is reserved. */
    private static boolean isFrame(int marker) {
        return marker >= 0xC0 && marker <= 0xCF && marker != 0xC4 && marker != 0xC8 && marker != 0xCC;
    }

    /** Up to the next marker that is no restart. */
    private static void skipScan(ByteBuffer file) {
        while (true) {
            if (unsigned(file.get()) == 0xFF) {
                int next = unsigned(file.get(file.position()));
                if (next != 0 && (next < 0xD0 || next > 0xD7)) {
                    file.position(file.position() - 1);
                    return;
                }
            }
        }
    }

    private static Orientation exif(ByteBuffer segment) {
        if (segment.remaining() < EXIF.length) {
            return Orientation.UPRIGHT;
        }
        byte[] name = new byte[EXIF.length];
        segment.get(name);
        return Arrays.equals(name, EXIF) ? Orientation.ofTiff(segment) : Orientation.UPRIGHT;
    }

    private static PictureParts ofPng(ByteBuffer file) throws Refused {
        int width = 0;
        int height = 0;
        Orientation orientation = Orientation.UPRIGHT;
        file.position(PNG_SIGNATURE_BYTES);
        while (true) {
            int length = file.getInt();
            byte[] type = new byte[4];
            file.get(type);
            if (length < 0) {
                throw new Refused("is no readable PNG", FileKind.RIGHT);
            }
            int next = Math.addExact(file.position(), Math.addExact(length, PNG_CHECKSUM_BYTES));
            switch (new String(type, StandardCharsets.US_ASCII)) {
                case "IHDR" -> {
                    width = Math.max(width, file.getInt(file.position()));
                    height = Math.max(height, file.getInt(file.position() + 4));
                }
                case "eXIf" -> orientation = Orientation.ofTiff(file.slice(file.position(), length));
                case "IEND" -> {
                    file.position(next);
                    return new PictureParts(width, height, orientation);
                }
                default -> {}
            }
            file.position(next);
        }
    }

    private static int unsigned(byte value) {
        return Byte.toUnsignedInt(value);
    }
}
