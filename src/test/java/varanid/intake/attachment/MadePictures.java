package varanid.intake.attachment;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import javax.imageio.ImageIO;

/** Pictures for tests, with what cameras and worse people put into them. */
final class MadePictures {

    /** What must not be found in anything that is kept. */
    static final String SECRET = "the address is 12 Hatchling Lane";

    private MadePictures() {}

    /** Red above green at the left, blue above white at the right. */
    static BufferedImage fourColours(int width, int height) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                boolean left = x < width / 2;
                boolean top = y < height / 2;
                Color colour = left ? top ? Color.RED : Color.GREEN : top ? Color.BLUE : Color.WHITE;
                image.setRGB(x, y, colour.getRGB());
            }
        }
        return image;
    }

    static byte[] jpeg(int width, int height) {
        return write(fourColours(width, height), "jpeg");
    }

    static byte[] png(int width, int height) {
        return write(fourColours(width, height), "png");
    }

    static byte[] write(BufferedImage image, String format) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try {
            if (!ImageIO.write(image, format, bytes)) {
                throw new IllegalStateException("no writer of " + format);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return bytes.toByteArray();
    }

    /** As a telephone writes it: how it was held, where it was (52° 30' north, 13° 24' east), a comment. */
    static byte[] withExif(byte[] jpeg, int orientation) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(jpeg, 0, 2);
        segment(out, 0xE1, concat("Exif\0\0".getBytes(StandardCharsets.ISO_8859_1), tiff(orientation)));
        segment(out, 0xFE, SECRET.getBytes(StandardCharsets.UTF_8));
        out.write(jpeg, 2, jpeg.length - 2);
        return out.toByteArray();
    }

    /** IFD0 with orientation and a GPS directory (Exif 2.32, 4.6.6). */
    static byte[] tiff(int orientation) {
        ByteBuffer data = ByteBuffer.allocate(200);
        data.put("MM".getBytes(StandardCharsets.ISO_8859_1))
                .putShort((short) 42)
                .putInt(8);
        data.putShort((short) 2);
        data.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) orientation)
                .putShort((short) 0);
        data.putShort((short) 0x8825).putShort((short) 4).putInt(1).putInt(38);
        data.putInt(0);
        // The GPS directory, at 38: two references and two places of three rationals each
        data.putShort((short) 4);
        data.putShort((short) 1).putShort((short) 2).putInt(2).put(new byte[] {'N', 0, 0, 0});
        data.putShort((short) 2).putShort((short) 5).putInt(3).putInt(92);
        data.putShort((short) 3).putShort((short) 2).putInt(2).put(new byte[] {'E', 0, 0, 0});
        data.putShort((short) 4).putShort((short) 5).putInt(3).putInt(116);
        data.putInt(0);
        data.putInt(52).putInt(1).putInt(30).putInt(1).putInt(0).putInt(1);
        data.putInt(13).putInt(1).putInt(24).putInt(1).putInt(0).putInt(1);
        byte[] tiff = new byte[data.position()];
        data.flip().get(tiff);
        return tiff;
    }

    /** A file that is a picture and a program's archive at once. */
    static byte[] withZipBehind(byte[] picture) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.writeBytes(picture);
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("hidden.txt"));
            zip.write(SECRET.getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** A chunk more, before the end. */
    static byte[] withChunk(byte[] png, String type, byte[] content) {
        int end = png.length - 12;
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(png, 0, end);
        out.writeBytes(chunk(type, content));
        out.write(png, end, 12);
        return out.toByteArray();
    }

    /** A few bytes that claim to be this large. */
    static byte[] claiming(int width, int height) {
        byte[] png = png(8, 8);
        byte[] header = ByteBuffer.allocate(13)
                .putInt(width)
                .putInt(height)
                .put(new byte[] {8, 2, 0, 0, 0})
                .array();
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        out.write(png, 0, 8);
        out.writeBytes(chunk("IHDR", header));
        out.write(png, 8 + 25, png.length - 8 - 25);
        return out.toByteArray();
    }

    static byte[] concat(byte[] one, byte[] other) {
        return ByteBuffer.allocate(one.length + other.length)
                .put(one)
                .put(other)
                .array();
    }

    private static byte[] chunk(String type, byte[] content) {
        byte[] named = concat(type.getBytes(StandardCharsets.US_ASCII), content);
        CRC32 checksum = new CRC32();
        checksum.update(named);
        return ByteBuffer.allocate(named.length + 8)
                .putInt(content.length)
                .put(named)
                .putInt((int) checksum.getValue())
                .array();
    }

    private static void segment(ByteArrayOutputStream out, int marker, byte[] content) {
        out.writeBytes(ByteBuffer.allocate(4)
                .put((byte) 0xFF)
                .put((byte) marker)
                .putShort((short) (content.length + 2))
                .array());
        out.writeBytes(content);
    }
}
