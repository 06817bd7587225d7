package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Sighting;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options about the litter: which look to count, among how many, and what was seen already. */
final class LitterOptions {

    /** Larger numbers are refused as this one is. */
    private static final int MOST_TRIED = 1000;

    private static final String EXAMPLE = "\"own records: 6 1/4, 7 1/2, 8 1/4\"";

    @Option(
            names = "--look",
            paramLabel = "LOOK",
            description = "A look asked for in particular, for example \"sex: male, eye colour: pink\".")
    private @Nullable String look;

    @Option(names = "--kits", paramLabel = "N", description = "How many of the young --look is counted in, 1 to 30.")
    private @Nullable Integer kits;

    @Option(
            names = "--litter-sizes",
            paramLabel = "SIZES",
            description = "In place of --kits: how often litters have each size, with a name, "
                    + "for example \"own records: 6 1/4, 7 1/2, 8 1/4\".")
    private @Nullable String sizes;

    @Option(
            names = "--seen",
            paramLabel = "LOOK",
            description =
                    "What one of the young seen already looks like, or looked like, \"... @ week 8, in daylight\"; "
                            + "once for each.")
    private List<String> seen = new ArrayList<>();

    @Option(
            names = "--counted",
            paramLabel = "WHO",
            defaultValue = "born",
            description = {
                "Which of the young are counted, where the model holds that some are lost:",
                "conceived, born (default) or scored."
            })
    private String counted = "born";

    MatingQuestion addTo(MatingQuestion question, Model model) {
        MatingQuestion more = question.among(census(counted));
        List<Sighting> sightings = new ArrayList<>();
        seen.forEach(one -> sightings.add(Inputs.sighting("--seen", model, one)));
        more = more.withSightings(sightings);
        if (look != null) {
            more = more.lookingFor(Inputs.look("--look", model, look));
        }
        if (kits != null && sizes != null) {
            throw new InputException("problem: --kits and --litter-sizes say the same twice; state one of them\n");
        }
        if (kits != null) {
            more = more.inLitterOf(Math.max(0, Math.min(kits, MOST_TRIED)));
        }
        return sizes == null ? more : more.inLitterOf(sizes("--litter-sizes", sizes));
    }

    /** Which of the young are counted. */
    static Census census(String counted) {
        Map<String, Census> words = new LinkedHashMap<>();
        for (Census one : Census.values()) {
            words.put(one.word(), one);
        }
        String word = Inputs.choice("--counted", counted, words.keySet().toArray(String[]::new));
        return words.getOrDefault(word, Census.BORN);
    }

    /** How often litters have each size. */
    static LitterSize sizes(String option, String given) {
        return Inputs.reading(option, given, () -> sizes(given));
    }

    private static LitterSize sizes(String given) {
        int colon = given.indexOf(':');
        Map<Integer, Probability> chances = new LinkedHashMap<>();
        try {
            for (String part : given.substring(colon + 1).split(",", -1)) {
                String[] words = part.strip().split("\\s+", -1);
                if (words.length != 2 || chances.put(Integer.parseInt(words[0]), Probability.parse(words[1])) != null) {
                    throw new IllegalArgumentException("\"" + part.strip() + "\" is no new size with its chance");
                }
            }
            if (colon < 1 || given.substring(0, colon).isBlank()) {
                throw new IllegalArgumentException("the sizes have no name");
            }
            return new LitterSize(given.substring(0, colon).strip(), Distribution.of(chances), Optional.empty());
        } catch (IllegalArgumentException e) {
            throw new ProblemsException(
                    Problem.of(Stage.SYNTAX, "litter-sizes-syntax", "", String.valueOf(e.getMessage()))
                            .expecting("sizes such as " + EXAMPLE));
        }
    }
}
