package org.geneticsrules.examples.textbook;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.List;
import org.geneticsrules.spi.GeneticsProvider;
import org.geneticsrules.spi.Plugin;

/**
 * Brings textbook models of peas, mice, fowl and other organisms: a second plug-in beside that of the ferret, for teaching and for
 * checking the library against published ratios.
 *
 * <p>Stateless and thread-safe.
 */
@Plugin(
        id = "geneticsrules.textbook",
        version = "1.0.0",
        title = "Textbook models",
        licence = "Apache-2.0",
        defaultModel = "geneticsrules.textbook.pea")
public final class TextbookProvider implements GeneticsProvider {

    /** Subjects that have a catalogue of their own, each with its models and their patches. */
    private static final List<List<String>> SUBJECTS = List.of(
            List.of("pea-traits", "pea"),
            List.of("mouse-traits", "mouse", "mouse-yellow", "mouse-dilute-leaden"),
            List.of("guinea-pig-traits", "guinea-pig", "guinea-pig-five-alleles", "guinea-pig-silvering"),
            List.of("rabbit-traits", "rabbit"),
            List.of("cat-traits", "cat-orange"),
            List.of("sheep-traits", "sheep-horns"),
            List.of(
                    "fowl-traits",
                    "fowl-comb",
                    "fowl-andalusian",
                    "fowl-dominant-white",
                    "fowl-barred-and-hen-feathered"),
            List.of("guppy-traits", "guppy-fin-spot"),
            List.of(
                    "fruit-fly-traits",
                    "fruit-fly-white-eyes",
                    "fruit-fly-white-eyes-viability",
                    "fruit-fly-three-point",
                    "fruit-fly-three-point-independent"),
            List.of("squash-traits", "squash"),
            List.of("sweet-pea-traits", "sweet-pea", "sweet-pea-three-factors", "sweet-pea-linkage"),
            List.of("maize-traits", "maize-linkage", "maize-mutation"),
            List.of("shepherds-purse-traits", "shepherds-purse"),
            List.of("wheat-traits", "wheat", "wheat-doses"),
            List.of("four-o-clock-traits", "four-o-clock"),
            List.of("blood-groups-traits", "blood-groups"),
            List.of("penetrance-traits", "penetrance"),
            List.of("two-locus-maps-traits", "two-locus-maps"));

    /** Makes the provider. */
    public TextbookProvider() {}

    @Override
    public List<String> documents() {
        List<String> names = new ArrayList<>();
        SUBJECTS.forEach(subject -> subject.forEach(name -> names.add(name + ".json")));
        return List.copyOf(names);
    }

    @Override
    public InputStream open(String name) throws IOException {
        InputStream in = TextbookProvider.class.getResourceAsStream(name);
        if (in == null) {
            throw new FileNotFoundException(name);
        }
        return in;
    }
}
