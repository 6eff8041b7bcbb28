package varanid.intake.platform.web;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.util.Map;

/** A QR code (ISO/IEC 18004) as an SVG drawing. */
public final class QrCode {

    /** Modules of white around it: the standard asks for four. */
    private static final int QUIET = 4;

    private QrCode() {}

    /**
     * The drawing: black on white whatever the scheme, for a scanner needs it.
     *
     * @param text what it says
     * @param title its text alternative
     * @param size its width and height in CSS pixels
     */
    public static String svg(String text, String title, int size) {
        ByteMatrix matrix;
        try {
            matrix = Encoder.encode(text, ErrorCorrectionLevel.M, Map.of(EncodeHintType.CHARACTER_SET, "UTF-8"))
                    .getMatrix();
        } catch (WriterException e) {
            throw new IllegalArgumentException("too long for a QR code: " + text.length() + " characters", e);
        }
        int side = matrix.getWidth() + 2 * QUIET;
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < matrix.getHeight(); y++) {
            for (int x = 0; x < matrix.getWidth(); x++) {
                if (matrix.get(x, y) == 1) {
                    path.append('M')
                            .append(x + QUIET)
                            .append(' ')
                            .append(y + QUIET)
                            .append("h1v1h-1z");
                }
            }
        }
        String name = Markup.escape(title);
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"qr\" role=\"img\" width=\"" + size + "\" height=\""
                + size + "\" viewBox=\"0 0 " + side + " " + side + "\" shape-rendering=\"crispEdges\" aria-label=\""
                + name + "\" alt=\"" + name + "\"><title>" + name + "</title><rect width=\"" + side + "\" height=\""
                + side + "\" fill=\"#ffffff\"/><path fill=\"#000000\" d=\"" + path + "\"/></svg>";
    }
}
