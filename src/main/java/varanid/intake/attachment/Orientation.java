package varanid.intake.attachment;

import java.awt.geom.AffineTransform;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How a camera was held: which of the eight ways a picture has to be turned or mirrored to stand upright (Exif 2.32, tag
 * 0x0112).
 */
record Orientation(int code) {

    static final Orientation UPRIGHT = new Orientation(1);

    private static final int TAG = 0x0112;
    private static final int SHORT = 3;
    private static final int BYTES_OF_AN_ENTRY = 12;

    Orientation {
        if (code < 1 || code > 8) {
            throw new IllegalArgumentException("no orientation: " + code);
        }
    }

    /** As a TIFF structure says, which is what Exif is; upright where it says nothing that makes sense. */
    static Orientation ofTiff(ByteBuffer tiff) {
        try {
            ByteBuffer data = tiff.slice();
            short order = data.getShort(0);
            data.order(order == 0x4949 ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
            if (order != 0x4949 && order != 0x4D4D || data.getShort(2) != 42) {
                return UPRIGHT;
            }
            int directory = data.getInt(4);
            int entries = Short.toUnsignedInt(data.getShort(directory));
            for (int i = 0; i < entries; i++) {
                int entry = directory + 2 + i * BYTES_OF_AN_ENTRY;
                if (Short.toUnsignedInt(data.getShort(entry)) == TAG && data.getShort(entry + 2) == SHORT) {
                    int code = Short.toUnsignedInt(data.getShort(entry + 8));
                    return code >= 1 && code <= 8 ? new Orientation(code) : UPRIGHT;
                }
            }
        } catch (IndexOutOfBoundsException | BufferUnderflowException e) {
            // Cut off or made up: then nothing is known of how it was held.
        }
        return UPRIGHT;
    }

    boolean swapsSides() {
        return code >= 5;
    }

    /** From the stored picture, so wide and high, to the upright one. */
    AffineTransform transform(int width, int height) {
        return switch (code) {
            case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
            case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
            case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
            case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
            case 8 -> new AffineTransform(0, -1, 1, 0, 0, width);
            default -> new AffineTransform();
        };
    }
}
