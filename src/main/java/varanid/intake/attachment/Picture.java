package varanid.intake.attachment;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.ImageInputStream;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * A picture that was written anew from the pixels of another one. Nothing else of that one is in it.
 *
 * @param jpeg upright, in sRGB
 * @param thumbnail the same, not wider or higher than {@link #THUMBNAIL}
 */
record Picture(byte[] jpeg, int width, int height, byte[] thumbnail) {

    static final int LARGEST_FILE = 10 * 1024 * 1024;

    /** What telephones make at most; unpacked at full size it would be 150 MB. */
    static final int MOST_PIXELS = 50_000_000;

    /** A row is unpacked as a whole, however few there are. */
    private static final int LONGEST_SIDE = 20_000;

    /** What is kept at most; larger pictures are thinned out while they are read, and never unpacked as a whole. */
    static final int LONGEST_SIDE_KEPT = 4096;

    static final int THUMBNAIL = 320;

    private static final float QUALITY = 0.9f;
    private static final float QUALITY_OF_THUMBNAIL = 0.8f;
    private static final String UNREADABLE = "cannot be read as a picture";
    private static final String SAVE_AGAIN =
            "a picture that a viewer opens; where this one does, save it anew from there as JPEG in RGB";

    /** @throws Refused where it is too large, not whole, or cannot be read */
    static Picture read(FileKind kind, byte[] file) throws Refused {
        PictureParts parts = PictureParts.of(kind, file);
        requireSize(parts.width(), parts.height());
        BufferedImage upright = upright(decode(kind, file), parts.orientation());
        return new Picture(
                encode(upright, QUALITY),
                upright.getWidth(),
                upright.getHeight(),
                encode(small(upright), QUALITY_OF_THUMBNAIL));
    }

    private static void requireSize(int width, int height) throws Refused {
        if (width <= 0 || height <= 0) {
            throw new Refused(UNREADABLE, SAVE_AGAIN);
        }
        if ((long) width * height > MOST_PIXELS || width > LONGEST_SIDE || height > LONGEST_SIDE) {
            throw new Refused(
                    "is " + width + " by " + height + " pixels",
                    "at most " + MOST_PIXELS / 1_000_000 + " million pixels, and " + LONGEST_SIDE + " along a side");
        }
    }

    private static BufferedImage decode(FileKind kind, byte[] file) throws Refused {
        ImageReader reader = ImageIO.getImageReadersByFormatName(kind == FileKind.JPEG ? "jpeg" : "png")
                .next();
        try (ImageInputStream input = new MemoryCacheImageInputStream(new ByteArrayInputStream(file))) {
            reader.setInput(input, true, true);
            int width = reader.getWidth(0);
            int height = reader.getHeight(0);
            requireSize(width, height);
            ImageReadParam param = reader.getDefaultReadParam();
            int step = (Math.max(width, height) + LONGEST_SIDE_KEPT - 1) / LONGEST_SIDE_KEPT;
            param.setSourceSubsampling(step, step, 0, 0);
            @Nullable BufferedImage read = reader.read(0, param);
            if (read == null) {
                throw new Refused(UNREADABLE, SAVE_AGAIN);
            }
            return read;
        } catch (IOException | RuntimeException e) {
            // The readers of the JDK throw what they like at what is no picture.
            throw new Refused(UNREADABLE, SAVE_AGAIN);
        } finally {
            reader.dispose();
        }
    }

    /** White where it was transparent. */
    private static BufferedImage upright(BufferedImage read, Orientation orientation) {
        int width = read.getWidth();
        int height = read.getHeight();
        BufferedImage upright = orientation.swapsSides() ? blank(height, width) : blank(width, height);
        draw(read, orientation.transform(width, height), upright);
        return upright;
    }

    /** Halved as often as that leaves it large enough, so that every pixel has its part in the small one. */
    private static BufferedImage small(BufferedImage picture) {
        int longest = Math.max(picture.getWidth(), picture.getHeight());
        if (longest <= THUMBNAIL) {
            return picture;
        }
        double factor = Math.max(0.5, THUMBNAIL / (double) longest);
        BufferedImage smaller = blank(Math.max(1, (int) Math.round(picture.getWidth() * factor)), Math.max(1, (int)
                Math.round(picture.getHeight() * factor)));
        draw(
                picture,
                AffineTransform.getScaleInstance(
                        smaller.getWidth() / (double) picture.getWidth(),
                        smaller.getHeight() / (double) picture.getHeight()),
                smaller);
        return small(smaller);
    }

    private static BufferedImage blank(int width, int height) {
        return new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    }

    private static void draw(BufferedImage from, AffineTransform transform, BufferedImage to) {
        Graphics2D graphics = to.createGraphics();
        try {
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, to.getWidth(), to.getHeight());
            graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
            graphics.drawImage(from, transform, null);
        } finally {
            graphics.dispose();
        }
    }

    private static byte[] encode(BufferedImage picture, float quality) {
        ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (MemoryCacheImageOutputStream output = new MemoryCacheImageOutputStream(bytes)) {
            ImageWriteParam param = writer.getDefaultWriteParam();
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(quality);
            writer.setOutput(output);
            writer.write(null, new IIOImage(picture, null, null), param);
        } catch (IOException e) {
            throw new IllegalStateException("a picture cannot be written into memory", e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
