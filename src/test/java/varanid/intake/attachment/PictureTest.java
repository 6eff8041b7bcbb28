package varanid.intake.attachment;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.GpsDirectory;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.StreamSupport;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class PictureTest {

    @Test
    void keepsThePixelsAndNotWhereTheyWereTaken() throws Exception {
        byte[] sent = MadePictures.withExif(MadePictures.jpeg(400, 300), 1);
        // The independent reader finds it in what was sent: 52° 30' north, 13° 24' east.
        GpsDirectory place = metadata(sent).getFirstDirectoryOfType(GpsDirectory.class);
        assertThat(place.getGeoLocation().getLatitude()).isEqualTo(52.5);
        assertThat(place.getGeoLocation().getLongitude()).isEqualTo(13.4);

        Picture kept = Picture.read(FileKind.JPEG, sent);

        for (byte[] bytes : List.of(kept.jpeg(), kept.thumbnail())) {
            assertThat(kindsOfMetadata(bytes)).doesNotContain("GPS", "Exif IFD0", "JpegComment", "XMP");
            assertThat(text(bytes)).doesNotContain("Exif", MadePictures.SECRET);
        }
        assertThat(kept.width()).isEqualTo(400);
        assertThat(kept.height()).isEqualTo(300);
    }

    /** Where red, which was stored at the top left, comes to stand (Exif 2.32, 4.6.4.A, Orientation). */
    @ParameterizedTest
    @CsvSource({
        "1, top left, bottom left",
        "2, top right, bottom right",
        "3, bottom right, top right",
        "4, bottom left, top left",
        "5, top left, top right",
        "6, top right, top left",
        "7, bottom right, bottom left",
        "8, bottom left, bottom right",
    })
    void standsUpright(int orientation, String red, String green) throws Exception {
        Picture kept = Picture.read(FileKind.JPEG, MadePictures.withExif(MadePictures.jpeg(400, 200), orientation));
        BufferedImage upright = ImageIO.read(new ByteArrayInputStream(kept.jpeg()));
        boolean turned = orientation >= 5;
        assertThat(upright.getWidth()).isEqualTo(kept.width()).isEqualTo(turned ? 200 : 400);
        assertThat(upright.getHeight()).isEqualTo(kept.height()).isEqualTo(turned ? 400 : 200);
        assertLooks(upright, red, Color.RED);
        assertLooks(upright, green, Color.GREEN);
        // The independent reader sees nothing that would turn it a second time.
        assertThat(StreamSupport.stream(metadata(kept.jpeg()).getDirectories().spliterator(), false)
                        .filter(each -> each.containsTag(ExifDirectoryBase.TAG_ORIENTATION)))
                .isEmpty();
    }

    @Test
    void readsHowItWasHeldFromAPngToo() throws Exception {
        byte[] png = MadePictures.withChunk(MadePictures.png(40, 20), "eXIf", MadePictures.tiff(6));
        Picture kept = Picture.read(FileKind.PNG, png);
        assertThat(kept.width()).isEqualTo(20);
        assertThat(kindsOfMetadata(kept.jpeg())).doesNotContain("GPS");
    }

    @Test
    void leavesWhatHidesBehindOrInAPng() throws Exception {
        byte[] png = MadePictures.withZipBehind(MadePictures.withChunk(
                MadePictures.png(64, 48),
                "tEXt",
                ("Comment\0" + MadePictures.SECRET).getBytes(StandardCharsets.ISO_8859_1)));
        Picture kept = Picture.read(FileKind.PNG, png);
        assertThat(text(kept.jpeg())).doesNotContain("PK\u0003\u0004", "hidden.txt", "Hatchling");
        assertThat(kept.jpeg()).startsWith(0xFF, 0xD8, 0xFF).endsWith(0xFF, 0xD9);
    }

    @Test
    void leavesWhatHidesBehindAJpeg() throws Exception {
        Picture kept = Picture.read(FileKind.JPEG, MadePictures.withZipBehind(MadePictures.jpeg(64, 48)));
        assertThat(text(kept.jpeg())).doesNotContain("PK\u0003\u0004", "hidden.txt");
    }

    @Test
    void isWhiteWhereItWasTransparent() throws Exception {
        byte[] clear = MadePictures.write(new BufferedImage(16, 16, BufferedImage.TYPE_INT_ARGB), "png");
        Picture kept = Picture.read(FileKind.PNG, clear);
        assertThat(ImageIO.read(new ByteArrayInputStream(kept.jpeg())).getRGB(8, 8))
                .isEqualTo(Color.WHITE.getRGB());
    }

    @ParameterizedTest
    @CsvSource({"1000, 500, 320, 160", "500, 1000, 160, 320", "300, 200, 300, 200", "4000, 3, 320, 1"})
    void theThumbnailIsNotLargerThan320(int width, int height, int smallWidth, int smallHeight) throws Exception {
        Picture kept = Picture.read(FileKind.PNG, MadePictures.png(width, height));
        BufferedImage small = ImageIO.read(new ByteArrayInputStream(kept.thumbnail()));
        assertThat(small.getWidth()).isEqualTo(smallWidth);
        assertThat(small.getHeight()).isEqualTo(smallHeight);
    }

    @Test
    void thinsOutWhatIsLargerThanIsKept() throws Exception {
        Picture kept = Picture.read(
                FileKind.PNG, MadePictures.write(new BufferedImage(9000, 90, BufferedImage.TYPE_BYTE_GRAY), "png"));
        assertThat(kept.width()).isEqualTo(3000).isLessThanOrEqualTo(Picture.LONGEST_SIDE_KEPT);
        assertThat(kept.height()).isEqualTo(30);
    }

    @ParameterizedTest
    @CsvSource({"60000, 60000", "2147483647, 2147483647", "20001, 1", "10000, 5001"})
    void refusesAFewBytesThatClaimToBeHuge(int width, int height) {
        assertThatThrownBy(() -> Picture.read(FileKind.PNG, MadePictures.claiming(width, height)))
                .isInstanceOf(Refused.class)
                .hasMessage("is " + width + " by " + height + " pixels");
    }

    @Test
    void refusesAJpegThatClaimsToBeHuge() {
        byte[] jpeg = MadePictures.jpeg(64, 64);
        int frame = text(jpeg).indexOf("\u00FF\u00C0");
        ByteBuffer.wrap(jpeg).putShort(frame + 5, (short) 65_000).putShort(frame + 7, (short) 65_000);
        assertThatThrownBy(() -> Picture.read(FileKind.JPEG, jpeg)).hasMessage("is 65000 by 65000 pixels");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.02, 0.3, 0.6, 0.999})
    void refusesWhatIsCutOff(double part) {
        byte[] jpeg = MadePictures.withExif(MadePictures.jpeg(300, 200), 6);
        assertThatThrownBy(() -> Picture.read(FileKind.JPEG, Arrays.copyOf(jpeg, (int) (jpeg.length * part))))
                .hasMessage("ends before the picture does");
        byte[] png = MadePictures.png(300, 200);
        assertThatThrownBy(() -> Picture.read(FileKind.PNG, Arrays.copyOf(png, (int) (png.length * part))))
                .hasMessage("ends before the picture does");
    }

    @Test
    void refusesWhatOnlyBeginsLikeAPicture() {
        byte[] html = "<html><script>alert(1)</script>".getBytes(StandardCharsets.US_ASCII);
        assertThatThrownBy(() -> Picture.read(
                        FileKind.JPEG, MadePictures.concat(new byte[] {(byte) 0xFF, (byte) 0xD8, (byte) 0xFF}, html)))
                .isInstanceOf(Refused.class);
        byte[] noPixels =
                MadePictures.concat(new byte[] {(byte) 0xFF, (byte) 0xD8}, new byte[] {(byte) 0xFF, (byte) 0xD9});
        assertThatThrownBy(() -> Picture.read(FileKind.JPEG, noPixels)).isInstanceOf(Refused.class);
    }

    /** Whatever is wrong with it, it is kept or refused, and nothing else is thrown. */
    @Test
    void bearsEveryByteBeingWrong() {
        byte[] good = MadePictures.withExif(MadePictures.jpeg(24, 16), 6);
        for (int at = 2; at < good.length; at++) {
            byte[] bad = good.clone();
            bad[at] = (byte) (bad[at] ^ 0x55);
            try {
                assertThat(Picture.read(FileKind.JPEG, bad).jpeg()).isNotEmpty();
            } catch (Refused refused) {
                assertThat(refused.right()).isNotEmpty();
            }
        }
    }

    private static void assertLooks(BufferedImage image, String corner, Color colour) {
        int x = corner.endsWith("left") ? image.getWidth() / 4 : image.getWidth() * 3 / 4;
        int y = corner.startsWith("top") ? image.getHeight() / 4 : image.getHeight() * 3 / 4;
        Color seen = new Color(image.getRGB(x, y));
        assertThat(List.of(seen.getRed() > 128, seen.getGreen() > 128, seen.getBlue() > 128))
                .as(corner)
                .isEqualTo(List.of(colour.getRed() > 128, colour.getGreen() > 128, colour.getBlue() > 128));
    }

    private static Metadata metadata(byte[] picture) throws Exception {
        return ImageMetadataReader.readMetadata(new ByteArrayInputStream(picture));
    }

    private static List<String> kindsOfMetadata(byte[] picture) throws Exception {
        return StreamSupport.stream(metadata(picture).getDirectories().spliterator(), false)
                .map(Directory::getName)
                .toList();
    }

    private static String text(byte[] bytes) {
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }
}
