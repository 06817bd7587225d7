package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.simulation.Founder;
import org.geneticsrules.simulation.PlannedLook;
import org.geneticsrules.simulation.PlannedTest;
import org.geneticsrules.simulation.Randomness;
import org.geneticsrules.simulation.Simulation;
import org.geneticsrules.simulation.Whom;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** The options that say which litters are drawn and what is written down of them. */
final class DrawingOptions {

    private static final int MOST_KITS = 30;

    private static final String COMPLETE = "complete";
    private static final String AT_LEAST_ONE = "at least one";
    private static final String PROBANDS = "probands";
    private static final String PARENTS_CHOSEN = "parents chosen";

    @Option(names = "--sire", paramLabel = "GENOTYPE", description = "What each sire carries, for example \"C/c\".")
    private @Nullable String sire;

    @Option(
            names = "--sire-look",
            paramLabel = "LOOK",
            description = "What each sire is recorded with, \"trait: state, ... @ moult 2\"; once "
                    + "for each look. The same traits are then written down of the dam.")
    private List<String> sireLooks = new ArrayList<>();

    @Option(names = "--dam", paramLabel = "GENOTYPE", description = "What each dam carries.")
    private @Nullable String dam;

    @Option(names = "--dam-look", paramLabel = "LOOK", description = "What each dam is recorded with, likewise.")
    private List<String> damLooks = new ArrayList<>();

    @Option(
            names = "--omitted",
            paramLabel = "MEANING",
            defaultValue = "unknown",
            description = "What it means that a genotype does not name a locus: unknown (default) or wild-type.")
    private String omitted = "unknown";

    @Option(
            names = "--population",
            paramLabel = "NAME",
            description = "The population whose frequencies weigh what is not known of the parents.")
    private @Nullable String population;

    @Option(
            names = "--kits",
            paramLabel = "N",
            defaultValue = "6",
            description = "How many kits a litter has, 1 to " + MOST_KITS + ". Default: 6.")
    private int kits = 6;

    @Option(
            names = "--litter-sizes",
            paramLabel = "SIZES",
            description = "In place of --kits: how often litters have each size, with a name, "
                    + "for example \"own records: 6 1/4, 7 1/2, 8 1/4\".")
    private @Nullable String sizes;

    @Option(
            names = "--counted",
            paramLabel = "WHO",
            defaultValue = "scored",
            description = "Which kits that number counts: conceived, born, or scored (default), when looked at.")
    private String counted = "scored";

    @Option(
            names = "--kits-seen",
            paramLabel = "TRAITS",
            description = "What is written down of kits, and when: \"hue, eye colour @ week 8\"; "
                    + "sex may be among it. Once for each look.")
    private List<String> kitsSeen = new ArrayList<>();

    @Option(names = "--parents-seen", paramLabel = "TRAITS", description = "What is written down of parents, likewise.")
    private List<String> parentsSeen = new ArrayList<>();

    @Option(
            names = "--kits-tested",
            paramLabel = "LOCI",
            description = "Loci at which kits have a DNA test, separated by commas.")
    private @Nullable String kitsTested;

    @Option(names = "--parents-tested", paramLabel = "LOCI", description = "Loci at which parents have one.")
    private @Nullable String parentsTested;

    @Option(
            names = "--test-error",
            paramLabel = "CHANCE",
            defaultValue = "0",
            description = "How often a DNA test is wrong, for example 1/100. Default: 0.")
    private String testError = "0";

    @Option(
            names = "--ascertainment",
            paramLabel = "HOW",
            defaultValue = "complete",
            description = "How litters come to be recorded: complete (default); \"at least one\", "
                    + "of whose kits at least one shows --sign; probands, whose kits that "
                    + "show it are noticed with the chance --noticed; or \"parents chosen\", "
                    + "who had an earlier kit with it.")
    private String ascertainment = "complete";

    @Option(names = "--sign", paramLabel = "LOOK", description = "What litters are noticed for.")
    private @Nullable String sign;

    @Option(names = "--noticed", paramLabel = "CHANCE", description = "How often such a kit is noticed.")
    private @Nullable String noticed;

    @Option(
            names = "--misnamed",
            paramLabel = "ERROR",
            description = "How often one state of a trait is recorded as another, for example "
                    + "\"hue: brown as black=2/100\"; once for each.")
    private List<String> misnamed = new ArrayList<>();

    @Option(
            names = "--seed",
            paramLabel = "SEED",
            defaultValue = "1",
            description = "Where chance begins; the same seed draws the same. Default: 1.")
    private long seed = 1;

    @Option(
            names = "--generator",
            paramLabel = "NAME",
            defaultValue = Randomness.USUAL,
            description = "The generator of random numbers. Default: " + Randomness.USUAL + ".")
    private String generator = Randomness.USUAL;

    /** What was read of the options that name something of a model. */
    private final StringBuilder problems = new StringBuilder();

    /**
     * What is drawn, and how.
     *
     * @param drawing draws and writes down
     * @param sire what is stated of each sire
     * @param dam what is stated of each dam
     * @param sires how sires are drawn
     * @param dams how dams are drawn
     * @param size how many kits a litter has
     * @param counted which kits that counts
     * @param population where parents come from
     */
    record Plan(
            Simulation drawing,
            Animal sire,
            Animal dam,
            Founder sires,
            Founder dams,
            LitterSize size,
            Census counted,
            Optional<Population> population) {}

    /** Reads all options; what is wrong with any of them is told at once. */
    Plan read(CompiledModel compiled) {
        Model model = compiled.model();
        Optional<Confusions> named = tried(() -> Misnamings.read(model, misnamed));
        Optional<Animal> male =
                tried(() -> Inputs.animal(compiled, "--sire", sire, "--sire-look", sireLooks, Inputs.omitted(omitted)));
        Optional<Animal> female =
                tried(() -> Inputs.animal(compiled, "--dam", dam, "--dam-look", damLooks, Inputs.omitted(omitted)));
        Optional<Optional<Population>> origin = tried(() -> Inputs.population(model, population));
        Optional<LitterSize> size = tried(() -> sizes == null
                ? LitterSize.of(Inputs.count("--kits", kits, 1, MOST_KITS))
                : LitterOptions.sizes("--litter-sizes", sizes));
        Optional<Census> census = tried(() -> LitterOptions.census(counted));
        List<PlannedLook> looks = new ArrayList<>();
        kitsSeen.forEach(
                one -> tried(() -> look("--kits-seen", model, one, Whom.KITS)).ifPresent(looks::add));
        List<PlannedLook> ofParents = new ArrayList<>();
        parentsSeen.forEach(one ->
                tried(() -> look("--parents-seen", model, one, Whom.FOUNDERS)).ifPresent(ofParents::add));
        male.ifPresent(one -> one.sightings().forEach(seen -> add(seen, ofParents)));
        female.ifPresent(one -> one.sightings().forEach(seen -> add(seen, ofParents)));
        Optional<Probability> error = tried(() -> Inputs.error("--test-error", testError));
        List<PlannedTest> tests = new ArrayList<>();
        tests.addAll(tests("--parents-tested", model, parentsTested, error, Whom.FOUNDERS));
        tests.addAll(tests("--kits-tested", model, kitsTested, error, Whom.KITS));
        Optional<Ascertainment> how = tried(() -> ascertainment(model));
        Optional<Randomness> randomness =
                tried(() -> Inputs.reading("--generator", generator, () -> new Randomness(generator, seed)));
        if (kitsSeen.isEmpty() && kitsTested == null) {
            problems.append("problem: nothing is written down of the kits; say what is with --kits-seen or"
                    + " --kits-tested\n");
        }
        if (problems.length() > 0) {
            throw new InputException(problems.toString());
        }
        looks.addAll(0, ofParents);
        Simulation drawing = Simulation.of(compiled)
                .with(randomness.orElseThrow())
                .looking(looks.toArray(PlannedLook[]::new))
                .testing(tests.toArray(PlannedTest[]::new))
                .misreading(named.orElseThrow())
                .keeping(how.orElseThrow());
        return new Plan(
                origin.orElseThrow().map(from -> drawing.from(from.id())).orElse(drawing),
                male.orElseThrow(),
                female.orElseThrow(),
                founder(male.orElseThrow(), origin.orElseThrow()),
                founder(female.orElseThrow(), origin.orElseThrow()),
                size.orElseThrow(),
                census.orElseThrow(),
                origin.orElseThrow());
    }

    /** Whether something is said of the parents by what they carry or look like. */
    boolean describesParents() {
        return sire != null || dam != null || !sireLooks.isEmpty() || !damLooks.isEmpty();
    }

    /** Where looks may be misnamed, one that shows something may carry anything that is taken for it. */
    private Founder founder(Animal animal, Optional<Population> origin) {
        return new Founder(
                misnamed.isEmpty() ? animal.genotypes() : animal.stated(),
                animal.phase(),
                origin.map(Population::id),
                animal.sightings());
    }

    private <T> Optional<T> tried(Supplier<T> reading) {
        try {
            return Optional.of(reading.get());
        } catch (InputException e) {
            problems.append(e.text());
        } catch (ProblemsException e) {
            problems.append(ProblemText.of(e.problems()));
        } catch (IllegalArgumentException e) {
            problems.append("problem: ").append(e.getMessage()).append('\n');
        }
        return Optional.empty();
    }

    /** A look at the traits that were seen, at the same time; one look for all that is seen then. */
    private static void add(Sighting seen, List<PlannedLook> looks) {
        Set<String> traits = new LinkedHashSet<>();
        for (PlannedLook look : looks) {
            if (look.stage().equals(seen.stage()) && look.light().equals(seen.light())) {
                traits.addAll(look.traits());
            }
        }
        looks.removeIf(look -> look.stage().equals(seen.stage()) && look.light().equals(seen.light()));
        traits.addAll(seen.look().traits());
        looks.add(new PlannedLook(seen.stage(), new ArrayList<>(traits), seen.light(), Probability.ONE, Whom.FOUNDERS));
    }

    /** Traits, and after an at sign when and in which light they are looked at. */
    private static PlannedLook look(String option, Model model, String given, Whom whom) {
        return Inputs.reading(option, given, () -> {
            int at = given.lastIndexOf('@');
            List<String> traits = Inputs.names(at < 0 ? given : given.substring(0, at));
            List<Problem> unknown = new ArrayList<>();
            for (String trait : traits) {
                if (!trait.equals(Sex.VARIABLE) && !model.visibleTraits().contains(trait)) {
                    unknown.add(Problems.unknown(
                            Stage.REFERENCES, "unknown-trait", "", "trait", trait, model.visibleTraits()));
                }
            }
            if (!unknown.isEmpty()) {
                throw new ProblemsException(unknown);
            }
            if (traits.isEmpty()) {
                throw new ProblemsException(Problem.of(Stage.SYNTAX, "look-syntax", "", "no trait is named")
                        .expecting("traits such as \"hue, eye colour @ week 8\""));
            }
            Sighting when = at < 0
                    ? Sighting.of(Phenotype.unspecified())
                    : Inputs.occasion(model, given.substring(at + 1), Phenotype.unspecified());
            return new PlannedLook(when.stage(), traits, when.light(), Probability.ONE, whom);
        });
    }

    private List<PlannedTest> tests(
            String option, Model model, @Nullable String loci, Optional<Probability> error, Whom whom) {
        List<PlannedTest> tests = new ArrayList<>();
        for (String locus : Inputs.names(loci)) {
            if (!model.loci().containsKey(locus)) {
                Problem problem = Problems.unknown(
                        Stage.REFERENCES,
                        "unknown-locus",
                        "",
                        "locus",
                        locus,
                        model.loci().keySet());
                problems.append(ProblemText.of(option, locus, List.of(problem)));
            } else {
                error.ifPresent(chance -> tests.add(new PlannedTest(locus, chance, Probability.ONE, whom)));
            }
        }
        return tests;
    }

    private Ascertainment ascertainment(Model model) {
        String word = Inputs.choice("--ascertainment", ascertainment, COMPLETE, AT_LEAST_ONE, PROBANDS, PARENTS_CHOSEN);
        boolean signed = !word.equals(COMPLETE);
        if (signed == (sign == null) || word.equals(PROBANDS) == (noticed == null)) {
            throw new InputException("problem: --ascertainment " + word + " goes with "
                    + (signed ? "--sign" : "no --sign") + " and "
                    + (word.equals(PROBANDS) ? "--noticed" : "no --noticed") + "\n");
        }
        if (sign == null) {
            return Ascertainment.complete();
        }
        Sighting seen = Inputs.sighting("--sign", model, sign);
        if (noticed != null) {
            return new Ascertainment.Probands(seen, Inputs.chance("--noticed", noticed), OptionalInt.empty());
        }
        return word.equals(AT_LEAST_ONE) ? new Ascertainment.AtLeastOne(seen) : new Ascertainment.ParentsChosen(seen);
    }
}
