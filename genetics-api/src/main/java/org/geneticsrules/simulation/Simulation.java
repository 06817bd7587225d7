package org.geneticsrules.simulation;

import com.google.common.collect.ImmutableList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.function.BiFunction;
import java.util.function.Consumer;
import java.util.function.Supplier;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Ascertainment;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Sex;

/**
 * Draws litters and pedigrees from a model of inheritance, with what a breeder would have written down of them and the truth behind it.
 *
 * <pre>{@code
 * Simulation drawing = Simulation.of(compiled).seeded(7).looking(PlannedLook.at("hue"));
 * Founder carrier = Founder.of(Genotype.parse(model, "C/c B/b"));
 * Stream<DrawnLitter> litters = drawing.litters(carrier, carrier, LitterSize.of(6), Census.BORN).limit(1000);
 * DrawnPedigree kennel = drawing.kennels(BreedingPlan.of(Founder.from(model, "kennel"), 3, 5, 4, 6, LitterSize.of(6)))
 *         .findFirst().orElseThrow();
 * Conclusions concluded = Inference.of(compiled, kennel.records()).conclude();
 * }</pre>
 *
 * <p>Chance is a parameter: the same simulation, asked the same, draws the same, on every JDK. Streams have no end, are ordered, and begin
 * anew each time one is asked for; take as many as are needed with {@link Stream#limit}.
 *
 * <p>What is drawn here says what would happen if the model were right. It says nothing of any animal that lives.
 *
 * <p>Immutable and thread-safe.
 */
public final class Simulation {

    /** How often it is tried to come by what is asked for, unless stated otherwise. */
    public static final long USUAL_TRIES = 100_000;

    private final CompiledModel compiled;
    private final Randomness randomness;
    private final ImmutableList<PlannedLook> looks;
    private final ImmutableList<PlannedTest> tests;
    private final Confusions confusions;
    private final Optional<String> population;
    private final boolean mutating;
    private final Ascertainment ascertainment;
    private final long tries;

    private Simulation(
            CompiledModel compiled,
            Randomness randomness,
            List<PlannedLook> looks,
            List<PlannedTest> tests,
            Confusions confusions,
            Optional<String> population,
            boolean mutating,
            Ascertainment ascertainment,
            long tries) {
        this.compiled = compiled;
        this.randomness = randomness;
        this.looks = ImmutableList.copyOf(looks);
        this.tests = ImmutableList.copyOf(tests);
        this.confusions = confusions;
        this.population = population;
        this.mutating = mutating;
        this.ascertainment = ascertainment;
        this.tries = tries;
    }

    /**
     * Returns a simulation that looks at nothing yet, with mutation, and with the seed 0.
     *
     * @param compiled the model
     * @return the simulation
     */
    public static Simulation of(CompiledModel compiled) {
        return new Simulation(
                compiled,
                Randomness.seeded(0),
                ImmutableList.of(),
                ImmutableList.of(),
                Confusions.none(),
                Optional.empty(),
                true,
                Ascertainment.complete(),
                USUAL_TRIES);
    }

    /**
     * Returns this simulation with another seed of the usual generator.
     *
     * @param seed any number
     * @return a copy
     */
    public Simulation seeded(long seed) {
        return with(Randomness.seeded(seed));
    }

    /**
     * Returns this simulation with another generator and seed.
     *
     * @param source where chance comes from
     * @return a copy
     */
    public Simulation with(Randomness source) {
        return new Simulation(compiled, source, looks, tests, confusions, population, mutating, ascertainment, tries);
    }

    /**
     * Returns this simulation with looks at every animal. Draws of one animal are shared by all looks at it. Traits that cannot be told at
     * that stage or in that light are not written down, nor are those for which the model makes no claim.
     *
     * @param planned the looks, in the order in which observations are to be written down; they replace those named before
     * @return a copy
     */
    public Simulation looking(PlannedLook... planned) {
        return new Simulation(
                compiled,
                randomness,
                Arrays.asList(planned),
                tests,
                confusions,
                population,
                mutating,
                ascertainment,
                tries);
    }

    /**
     * Returns this simulation with DNA tests.
     *
     * @param planned the tests; they replace those named before
     * @return a copy
     */
    public Simulation testing(PlannedTest... planned) {
        return new Simulation(
                compiled,
                randomness,
                looks,
                Arrays.asList(planned),
                confusions,
                population,
                mutating,
                ascertainment,
                tries);
    }

    /**
     * Returns this simulation with states that are sometimes written down as others, each time anew.
     *
     * @param named how often
     * @return a copy
     */
    public Simulation misreading(Confusions named) {
        return new Simulation(compiled, randomness, looks, tests, named, population, mutating, ascertainment, tries);
    }

    /**
     * Returns this simulation with a population for founders of pedigrees that state none, recorded or not.
     *
     * @param id id of a population
     * @return a copy
     */
    public Simulation from(String id) {
        return new Simulation(
                compiled, randomness, looks, tests, confusions, Optional.of(id), mutating, ascertainment, tries);
    }

    /**
     * Returns this simulation without mutation.
     *
     * @return a copy
     */
    public Simulation withoutMutation() {
        return new Simulation(compiled, randomness, looks, tests, confusions, population, false, ascertainment, tries);
    }

    /**
     * Returns this simulation of only such litters as come to be recorded in some way; the usual one is {@linkplain
     * Ascertainment#complete() complete}, all of them. What is drawn states it.
     *
     * <p>A litter is noticed by what was <i>written down</i> of its kits: at the planned look that the stage and light of the sign name, or
     * at any look where they are not stated. Where that is one look alone, what is drawn tells its stage and light. With {@linkplain
     * Ascertainment.AtLeastOne at least one} each litter with such a kit is kept (truncate selection); of {@linkplain Ascertainment.Probands
     * probands} each is noticed with the chance stated, by itself, and with a small one nearly every litter kept has one (single selection).
     * In either case such kits are more frequent among those kept than among all that are born (Weinberg 1912; Fisher 1934, Annals of
     * Eugenics 6:13; from memory).
     *
     * <p>With {@linkplain Ascertainment.ParentsChosen parents chosen} one earlier kit of the same parents is drawn, looked at like any other
     * and left out of the records; a litter is kept if that kit was written down with the sign. So each pair is as frequent as it would be
     * if one kit of each, taken blindly, had been seen. Parents of whom some kit among several was seen with the sign are otherwise
     * distributed; draw the earlier litter as well, and keep it with at least one.
     *
     * <p>A pedigree is kept if each of its litters is noticed. Where parents are known, litters are then as if drawn one by one. Several
     * litters of uncertain parents also speak of these parents by being there together, and a likelihood that takes one litter after the
     * other does not allow for that.
     *
     * @param how complete, at least one, probands without a count, or parents chosen
     * @return a copy
     * @throws IllegalArgumentException if it is not stated, or with a count of probands, which is drawn
     */
    public Simulation keeping(Ascertainment how) {
        Selection.check(how);
        return new Simulation(compiled, randomness, looks, tests, confusions, population, mutating, how, tries);
    }

    /**
     * Returns this simulation with another bound on tries: on litters or pedigrees drawn until one is kept, and on founders drawn until
     * they can have the kits they are to have.
     *
     * @param most how often it is tried, at least 1
     * @return a copy
     * @throws IllegalArgumentException if it is less than 1
     */
    public Simulation within(long most) {
        if (most < 1) {
            throw new IllegalArgumentException("at least one try is needed, but " + most + " were allowed");
        }
        return new Simulation(
                compiled, randomness, looks, tests, confusions, population, mutating, ascertainment, most);
    }

    /**
     * Returns the model.
     *
     * @return the model animals are drawn from
     */
    public Model model() {
        return compiled.model();
    }

    /**
     * Returns the naming errors that are made.
     *
     * @return how often a state is written down as another
     */
    public Confusions confusions() {
        return confusions;
    }

    /**
     * Returns what is planned to be looked at.
     *
     * @return the looks, in order
     */
    public List<PlannedLook> looks() {
        return looks;
    }

    /**
     * Returns what is planned to be tested.
     *
     * @return the tests, in order
     */
    public List<PlannedTest> tests() {
        return tests;
    }

    /**
     * Returns how litters come to be recorded.
     *
     * @return as stated, or complete
     */
    public Ascertainment ascertainment() {
        return ascertainment;
    }

    /**
     * Returns where chance comes from.
     *
     * @return the generator and its seed
     */
    public Randomness randomness() {
        return randomness;
    }

    /**
     * Draws litters of one mating, one after another. What is not known of the parents is drawn anew for each litter, so litters do not depend
     * on one another; for several litters of one pair of unknown parents draw a {@linkplain #pedigrees pedigree}.
     *
     * @param sire the male parent
     * @param dam the female parent
     * @param size how many kits a litter holds
     * @param counted which kits that number counts: those conceived, of whom some may be lost; those born; or those alive when the litter is
     *     scored, who are the kits of the result in any case
     * @return an ordered stream without end
     * @throws ProblemsException if something named is unknown to the model, a look states too little, or a parent is not known well enough;
     *     all such problems at once
     * @throws TooRareException while the stream is read, if no parents who can have kits that count, or no litter to be kept, comes up
     */
    public Stream<DrawnLitter> litters(Founder sire, Founder dam, LitterSize size, Census counted) {
        Problems problems = new Problems(Stage.MEANING);
        Genome genome = genome(problems);
        FounderDraw male = founder(genome, sire, Sex.MALE, "/sire", problems);
        FounderDraw female = founder(genome, dam, Sex.FEMALE, "/dam", problems);
        problems.throwIfAny();
        return endless(() -> {
            Drawing drawing = drawing(genome);
            Litters litters = new Litters(drawing, male, female, drawing.sizes(size), counted, tries);
            return kept("litter to be kept", litters::draw, DrawnLitter::after);
        });
    }

    /**
     * Draws pedigrees after a plan: its individuals with their sexes and dates, its litters with their counts and with sires who are certain,
     * one of several, or not recorded. Each individual that comes from a litter lived until that was scored. What the plan has on record of
     * looks, names, tests, hearing and how litters came to be recorded is left out, and so are its corrections. Where litters are
     * {@linkplain #keeping kept} because of their kits, each lists all that were scored.
     *
     * <p>A stated sex is part of the plan: a kit is drawn among those of its sex, and the sex tells nothing of its parents. Where it is not
     * stated, kits are of the sex that they happen to have, and it is written down by looks at {@code sex} alone.
     *
     * @param plan the structure
     * @param founders what is known of founders, by id; any other founder is an animal of its population
     * @return an ordered stream without end
     * @throws ProblemsException as above
     * @throws TooRareException while the stream is read, as above
     */
    public Stream<DrawnPedigree> pedigrees(Pedigree plan, Map<String, Founder> founders) {
        Problems problems = new Problems(Stage.MEANING);
        Genome genome = genome(problems);
        PlanChecks.listed(plan, ascertainment, problems);
        founders.forEach(
                (id, founder) -> new PlanChecks(compiled, problems).seen(founder, looks, Pointer.of("founders", id)));
        Descent descent = new Descent(plan, genome, founders, population, problems);
        problems.throwIfAny();
        return endless(() -> {
            Drawing drawing = drawing(genome);
            Drop drop = new Drop(drawing, descent, randomness, tries);
            return kept("pedigree whose litters are all to be kept", drop::draw, DrawnPedigree::after);
        });
    }

    /**
     * Draws pedigrees whose matings are left to chance.
     *
     * @param plan the numbers
     * @return an ordered stream without end
     * @throws ProblemsException as above
     * @throws TooRareException while the stream is read, as above
     */
    public Stream<DrawnPedigree> kennels(BreedingPlan plan) {
        Problems problems = new Problems(Stage.MEANING);
        Genome genome = genome(problems);
        List<FounderDraw> males = founders(genome, plan.males(), Sex.MALE, "males", problems);
        List<FounderDraw> females = founders(genome, plan.females(), Sex.FEMALE, "females", problems);
        problems.throwIfAny();
        return endless(() -> {
            Drawing drawing = drawing(genome);
            Kennels kennels = new Kennels(drawing, plan, males, females, randomness, tries);
            return kept("pedigree whose litters are all to be kept", kennels::draw, DrawnPedigree::after);
        });
    }

    /**
     * Draws couples with their litters. Each couple is drawn by itself: where litters are {@linkplain #keeping kept} because of their kits, a
     * couple is kept if each of its litters is noticed. Kits are looked at like founders, unless looks say otherwise ({@link Whom}); their sex is
     * written down by looks at {@code sex} alone.
     *
     * @param plan the couples, and how many litters each has
     * @return an ordered stream without end, each element with all couples of the plan
     * @throws ProblemsException as above
     * @throws TooRareException while the stream is read, as above
     */
    public Stream<DrawnPedigree> couples(LitterPlan plan) {
        Problems problems = new Problems(Stage.MEANING);
        Genome genome = genome(problems);
        FounderDraw sires = founder(genome, plan.sire(), Sex.MALE, "/sire", problems);
        FounderDraw dams = founder(genome, plan.dam(), Sex.FEMALE, "/dam", problems);
        problems.throwIfAny();
        return endless(() -> new Couples(drawing(genome), plan, sires, dams, randomness, tries)::draw);
    }

    private FounderDraw founder(Genome genome, Founder founder, Sex sex, String pointer, Problems problems) {
        new PlanChecks(compiled, problems).seen(founder, looks, pointer);
        return FounderDraw.of(genome, founder, List.of(sex), pointer, problems);
    }

    private List<FounderDraw> founders(Genome genome, List<Founder> founders, Sex sex, String name, Problems problems) {
        List<FounderDraw> draws = new ArrayList<>();
        for (int i = 0; i < founders.size(); i++) {
            // founders of one description stand next to one another
            draws.add(
                    i > 0 && founders.get(i).equals(founders.get(i - 1))
                            ? draws.get(i - 1)
                            : founder(genome, founders.get(i), sex, Pointer.of(name, Integer.toString(i)), problems));
        }
        return draws;
    }

    // ---- before anything is drawn ----------------------------------------------------------------------------------

    private Genome genome(Problems problems) {
        new PlanChecks(compiled, problems).check(looks, tests, ascertainment);
        return new Genome(compiled.model());
    }

    private Drawing drawing(Genome genome) {
        Model model = compiled.model();
        return new Drawing(
                genome,
                new Meiosis(genome, mutating),
                new Lives(compiled, genome, looks),
                new Recorder(model, looks, confusions, tests, genome),
                new Selection(ascertainment, model, looks),
                new Chance(randomness.start()),
                tries);
    }

    // ---- draw after draw -------------------------------------------------------------------------------------------

    private <T> Supplier<T> kept(String what, Supplier<Optional<T>> draw, BiFunction<T, Long, T> after) {
        return () -> {
            for (long tried = 1; tried <= tries; tried++) {
                Optional<T> one = draw.get();
                if (one.isPresent()) {
                    return after.apply(one.get(), tried);
                }
            }
            // 0.001 = (1 - p)^n at about p = 6.9 / n
            throw new TooRareException(
                    "no " + what + " (" + ascertainment + ") came up",
                    tries,
                    "if one in " + Math.max(1, tries * 10 / 69)
                            + " were such, it would have come up 999 times in 1000.");
        };
    }

    private static <T> Stream<T> endless(Supplier<Supplier<T>> begin) {
        Supplier<T> next = begin.get();
        return StreamSupport.stream(
                new Spliterators.AbstractSpliterator<T>(
                        Long.MAX_VALUE, Spliterator.ORDERED | Spliterator.NONNULL | Spliterator.IMMUTABLE) {
                    @Override
                    public boolean tryAdvance(Consumer<? super T> action) {
                        action.accept(next.get());
                        return true;
                    }
                },
                false);
    }
}
