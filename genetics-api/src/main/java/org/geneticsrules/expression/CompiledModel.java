package org.geneticsrules.expression;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.jspecify.annotations.Nullable;

/**
 * A model made ready for questions about phenotypes.
 *
 * <pre>{@code
 * CompiledModel compiled = CompiledModel.of(model);
 * Expressed kit = compiled.express(Genotype.parse(model, "c/c B/b"), Set.of("hue"));
 * GenotypeSet behindPink = compiled.showing(Phenotype.of("eye", "pink"));
 * Distribution<Expressed> adult =
 *         compiled.express(Genotype.parse(model, "c/c B/b M/m"), Sex.FEMALE, LifeStage.atMoult(3), Set.of("hue", "white hairs"));
 * }</pre>
 *
 * <p>Immutable as seen from outside and thread-safe: the diagram of a question is built on first use and kept, unless very many
 * others are asked in between.
 */
public final class CompiledModel {

    private final Model model;
    private final View everything;
    private final Kept<Viewed, Diagram<Phenotype>> diagrams = new Kept<>();
    private final Kept<Census, Diagram<Phenotype>> survival = new Kept<>();
    private final Kept<Sightings, Diagram<Boolean>> matching = new Kept<>();
    private final Kept<Records, ImmutableList<WeightedBox>> evidence = new Kept<>();
    private final Kept<Look, Bearing> bearings = new Kept<>();

    /** The diagram that most ask for, kept at hand. */
    private volatile @Nullable Diagram<Phenotype> ofEverything;

    private record Sightings(List<Sighting> seen, Census census) {}

    private record Records(List<Reading> readings, Confusions confusions) {}

    private record Viewed(View view, List<Reading> before) {}

    private CompiledModel(Model model) {
        this.model = model;
        this.everything = View.of(model.visibleTraits());
    }

    /**
     * Compiles a model.
     *
     * @param model a model
     * @return the compiled model
     */
    public static CompiledModel of(Model model) {
        return new CompiledModel(model);
    }

    /**
     * Returns the model.
     *
     * @return the model that was compiled
     */
    public Model model() {
        return model;
    }

    /**
     * Returns the view of all visible traits of the model, for kits born, at a stage of which nothing is said.
     *
     * @return the view
     */
    public View everything() {
        return everything;
    }

    /**
     * Returns the loci on which the shown states of some traits depend, at any stage.
     *
     * @param traits trait ids; {@code sex} may be among them
     * @return locus ids in model order
     */
    public Set<String> lociRead(Collection<String> traits) {
        return Reads.of(model, List.of(look(traits, LifeStage.unstated()))).loci();
    }

    /**
     * Returns the loci on which a view depends: those that its traits depend on at its stage, and those of the statements about
     * viability that bear on it.
     *
     * @param view what is looked at
     * @return locus ids in model order
     */
    public Set<String> lociRead(View view) {
        return relevance(view).loci();
    }

    /**
     * Tells whether a view depends on the sex of the animals.
     *
     * @param view what is looked at
     * @return true if the sex is asked for or read, or a locus or a statement about viability that bears on it differs between the sexes
     */
    public boolean dependsOnSex(View view) {
        return relevance(view).sex();
    }

    /**
     * Returns the statements about viability on which the shares of what kits show depend.
     *
     * @param loci the loci whose expression matters
     * @param sex whether the sex matters, beside what of it the loci bring with them
     * @param census which kits are counted
     * @return those that bear on it, and those by which none is lost but that would bear on it if they said something else; in declared
     *     order
     */
    public List<Viability> viability(Set<String> loci, boolean sex, Census census) {
        return Relevance.of(model, loci, sex, census).supposable(census);
    }

    private Relevance relevance(View view) {
        return Relevance.of(model, Reads.of(model, List.of(look(view.traits(), view.stage()))), view.census());
    }

    private Look look(Collection<String> traits, LifeStage stage) {
        return new Look(known(traits), stage);
    }

    /**
     * Expresses a genotype and tells every step, where neither chance nor stage nor the sex make a difference.
     *
     * @param genotype a genotype that covers at least the loci read
     * @param traits the traits asked for
     * @return what is seen, and how it came about
     * @throws IllegalArgumentException if a trait is unknown, a locus that is read is not covered, a chance decides, or the sex does
     * @throws ProblemsException if a statement that is read depends on the stage
     */
    public Expressed express(Genotype genotype, Collection<String> traits) {
        Map<String, String> expressions = new LinkedHashMap<>();
        for (String locus : lociRead(traits)) {
            Set<String> shown = model.locus(locus).expressions(pair(genotype, locus, traits));
            if (shown.size() > 1) {
                throw new IllegalArgumentException("the genotype \"" + genotype + "\" shows at locus " + locus + " as "
                        + shown + ", depending on the sex, which is not given");
            }
            expressions.put(locus, shown.iterator().next());
        }
        return express(expressions, traits);
    }

    /**
     * Expresses a combination of expressions and tells every step, where neither chance nor stage nor the sex make a difference.
     *
     * @param expressions the expression of at least each locus read
     * @param traits the traits asked for
     * @return what is seen, and how it came about
     * @throws IllegalArgumentException if a trait is unknown, an expression is missing, a chance decides, or the sex does
     * @throws ProblemsException if a statement that is read depends on the stage
     */
    public Expressed express(Map<String, String> expressions, Collection<String> traits) {
        Look look = covered(expressions, traits, LifeStage.unstated());
        return express(expressions, Optional.empty(), look, CompiledModel::refuse);
    }

    /**
     * Expresses an animal whose draws are known, and tells every step.
     *
     * @param expressions the expression of at least each locus read
     * @param sex its sex
     * @param stage when it is looked at
     * @param draws the outcome of each draw that is reached, by the pointer of its case
     * @param traits the traits asked for; {@code sex} may be among them
     * @return what is seen, and how it came about
     * @throws IllegalArgumentException if a trait is unknown, an expression or the outcome of a draw is missing or not known
     * @throws ProblemsException if a statement that is read depends on what the stage does not state
     */
    public Expressed express(
            Map<String, String> expressions,
            Sex sex,
            LifeStage stage,
            Map<String, String> draws,
            Collection<String> traits) {
        Look look = covered(expressions, traits, stage);
        return express(expressions, Optional.of(sex), look, (pointer, chances) -> {
            String outcome = draws.get(pointer);
            if (outcome == null || chances.probability(outcome).isZero()) {
                throw new IllegalArgumentException("chance decides by " + pointer + " between " + chances.outcomes()
                        + ", but what is given is " + outcome);
            }
            return outcome;
        });
    }

    /**
     * Expresses an animal whose draws are decided where they are reached, and tells every step.
     *
     * <p>A draw is asked for once in a call. Of a progressing trait the outcomes are the states that it may have at the stage, with their
     * chances as long as no other stage is known.
     *
     * @param expressions the expression of at least each locus read
     * @param sex its sex
     * @param stage when it is looked at
     * @param traits the traits asked for; {@code sex} may be among them
     * @param chooser decides each draw that is reached
     * @return what is seen, and how it came about
     * @throws IllegalArgumentException if a trait is unknown, an expression is missing, or the chooser returns what is no outcome
     * @throws ProblemsException if a statement that is read depends on what the stage does not state
     */
    public Expressed express(
            Map<String, String> expressions, Sex sex, LifeStage stage, Collection<String> traits, Chooser chooser) {
        Look look = covered(expressions, traits, stage);
        return express(expressions, Optional.of(sex), look, (pointer, chances) -> {
            String outcome = chooser.choose(pointer, chances);
            if (chances.probability(outcome).isZero()) {
                throw new IllegalArgumentException(
                        "\"" + outcome + "\" is no outcome of " + pointer + ": " + chances.outcomes());
            }
            return outcome;
        });
    }

    /**
     * Expresses a combination of expressions in every way in which chance may decide about the draws that are not known.
     *
     * @param expressions the expression of at least each locus read
     * @param sex sex of the animal
     * @param stage when it is looked at
     * @param draws outcomes of draws that are known, by the pointer of their case
     * @param traits the traits asked for; {@code sex} may be among them
     * @return the chance of what is seen and how it came about
     * @throws IllegalArgumentException if a trait is unknown or an expression is missing
     * @throws ProblemsException if a statement that is read depends on what the stage does not state
     * @throws TooLargeException if chance may decide in too many ways
     */
    public Distribution<Expressed> ways(
            Map<String, String> expressions,
            Sex sex,
            LifeStage stage,
            Map<String, String> draws,
            Collection<String> traits) {
        Look look = covered(expressions, traits, stage);
        return EveryWay.of(draws, chooser -> express(expressions, Optional.of(sex), look, chooser));
    }

    /**
     * Expresses a combination of expressions in one of the ways in which chance may decide: draws that are not known fall on the first
     * outcome that is possible.
     *
     * @param expressions the expression of at least each locus read
     * @param sex sex of the animal
     * @param stage when it is looked at
     * @param draws outcomes of draws that are known, by the pointer of their case
     * @param traits the traits asked for; {@code sex} may be among them
     * @return what is seen and how it came about
     * @throws IllegalArgumentException if a trait is unknown or an expression is missing
     * @throws ProblemsException if a statement that is read depends on what the stage does not state
     */
    public Expressed oneWay(
            Map<String, String> expressions,
            Sex sex,
            LifeStage stage,
            Map<String, String> draws,
            Collection<String> traits) {
        Look look = covered(expressions, traits, stage);
        return express(expressions, Optional.of(sex), look, (pointer, chances) -> {
            String outcome = draws.get(pointer);
            return outcome == null ? chances.outcomes().iterator().next() : outcome;
        });
    }

    /**
     * Expresses a combination of expressions in every way in which chance may decide.
     *
     * @param expressions the expression of at least each locus read
     * @param sex sex of the animal
     * @param stage when it is looked at
     * @param traits the traits asked for; {@code sex} may be among them
     * @return the chance of what is seen and how it came about; one outcome where chance has no part
     * @throws IllegalArgumentException if a trait is unknown or an expression is missing
     * @throws ProblemsException if a statement that is read depends on what the stage does not state
     * @throws TooLargeException if chance may decide in too many ways
     */
    public Distribution<Expressed> express(
            Map<String, String> expressions, Sex sex, LifeStage stage, Collection<String> traits) {
        Look look = covered(expressions, traits, stage);
        return EveryWay.of(chooser -> express(expressions, Optional.of(sex), look, chooser));
    }

    /**
     * Expresses a genotype in every way in which chance may decide.
     *
     * @param genotype a genotype that covers at least the loci read, except those on a chromosome that the sex lacks
     * @param sex sex of the animal
     * @param stage when it is looked at
     * @param traits the traits asked for; {@code sex} may be among them
     * @return the chance of what is seen and how it came about; one outcome where chance has no part
     * @throws IllegalArgumentException if a trait is unknown, a locus that is read is not covered, or animals of that sex cannot have
     *     the genotype
     * @throws ProblemsException if a statement that is read depends on what the stage does not state
     * @throws TooLargeException if chance may decide in too many ways
     */
    public Distribution<Expressed> express(Genotype genotype, Sex sex, LifeStage stage, Collection<String> traits) {
        return ways(genotype, sex, stage, ImmutableMap.of(), traits);
    }

    /**
     * Expresses a genotype in every way in which chance may decide about the draws that are not known.
     *
     * @param genotype a genotype as above
     * @param sex sex of the animal
     * @param stage when it is looked at
     * @param draws outcomes of draws that are known, by the pointer of their case
     * @param traits the traits asked for; {@code sex} may be among them
     * @return the chance of what is seen and how it came about
     * @throws IllegalArgumentException as above
     * @throws ProblemsException if a statement that is read depends on what the stage does not state
     * @throws TooLargeException if chance may decide in too many ways
     */
    public Distribution<Expressed> ways(
            Genotype genotype, Sex sex, LifeStage stage, Map<String, String> draws, Collection<String> traits) {
        Map<String, String> expressions = new LinkedHashMap<>();
        for (String name : lociRead(new View(ImmutableList.copyOf(known(traits)), stage, Census.CONCEIVED))) {
            Locus locus = model.locus(name);
            boolean absent = locus.transmission().strands(sex) == 0
                    && genotype.pair(name).isEmpty();
            AllelePair pair = absent ? locus.of() : pair(genotype, name, traits);
            if (!locus.pairs(sex).contains(pair)) {
                throw new IllegalArgumentException(
                        "a " + sex.word() + " cannot have the genotype " + pair + " at locus " + name);
            }
            expressions.put(name, locus.expression(pair, sex));
        }
        return ways(expressions, sex, stage, draws, traits);
    }

    private static AllelePair pair(Genotype genotype, String locus, Collection<String> traits) {
        return genotype.pair(locus)
                .orElseThrow(() -> new IllegalArgumentException("the genotype \"" + genotype
                        + "\" does not say what locus " + locus + " carries, which " + traits + " depend on"));
    }

    /** The look asked for, after a check that all that it needs is given. */
    private Look covered(Map<String, String> expressions, Collection<String> traits, LifeStage stage) {
        Look look = look(traits, stage);
        Reads reads = Reads.of(model, List.of(look));
        if (!reads.needs().isEmpty()) {
            throw new ProblemsException(reads.needs());
        }
        if (!expressions.keySet().containsAll(reads.loci())) {
            throw new IllegalArgumentException(
                    "the expressions " + expressions + " do not cover the loci read, " + reads.loci());
        }
        return look;
    }

    private Expressed express(Map<String, String> expressions, Optional<Sex> sex, Look look, Chooser chooser) {
        return new Interpreter(model, expressions, sex, look.stage(), chooser).express(look.traits());
    }

    private static String refuse(String pointer, Distribution<String> chances) {
        throw new IllegalArgumentException("what is seen is a matter of chance by " + pointer + ": " + chances);
    }

    /**
     * Returns the diagram of all visible traits of the model, for kits born, at a stage of which nothing is said.
     *
     * @return the diagram
     * @throws ProblemsException if a trait depends on the stage
     * @throws TooLargeException if the diagram would be too large
     */
    public Diagram<Phenotype> diagram() {
        Diagram<Phenotype> before = ofEverything;
        if (before == null) {
            before = diagram(everything);
            ofEverything = before;
        }
        return before;
    }

    /**
     * Returns the diagram of some traits, for kits born, at a stage of which nothing is said.
     *
     * @param traits trait ids; {@code sex} may be among them
     * @return the diagram
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if a trait depends on the stage
     * @throws TooLargeException if the diagram would be too large
     */
    public Diagram<Phenotype> diagram(Collection<String> traits) {
        return diagram(View.of(traits));
    }

    /**
     * Returns the diagram of what is seen in a view.
     *
     * @param view what is looked at
     * @return the diagram; its outcomes are in the declared order of states, trait by trait, a trait without claim last
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if the view's stage lacks what its traits depend on: one problem {@code stage-needed} for each statement
     * @throws TooLargeException if the diagram would be too large, with the statements that drive it
     */
    public Diagram<Phenotype> diagram(View view) {
        return diagramAfter(view, ImmutableList.of());
    }

    /**
     * Returns the diagram of what is seen in a view of an animal of which there are records that may leave several looks open. What chance
     * decided once in its life is the same then and now.
     *
     * @param view what is looked at
     * @param before records of the animal; a trait for which the model makes no claim is evidence of nothing
     * @return the diagram as above; animals that cannot have been recorded so end in no outcome, as if they were lost
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if a stage lacks what the traits seen then depend on
     * @throws TooLargeException if the diagram would be too large, with the statements that drive it
     */
    public Diagram<Phenotype> diagramAfter(View view, List<Reading> before) {
        return diagrams.get(new Viewed(view, ImmutableList.copyOf(before)), asked -> {
            known(asked.view().traits());
            asked.before().forEach(one -> known(one.traits()));
            return DiagramBuilder.phenotypes(model, asked.view(), asked.before());
        });
    }

    /**
     * Returns a diagram of what is seen in a view that tests loci in a stated order, so that it can be read side by side with that of
     * another model. It counts every loss, whether or not it bears on what is seen. It is not kept.
     *
     * @param view what is looked at
     * @param order locus ids, among them at least those that the view depends on and those of statements about viability
     * @return the diagram; {@link Diagram#weigh} takes it only if the order leaves linked loci together in map order
     * @throws IllegalArgumentException if a trait is unknown or the order leaves out a locus
     * @throws ProblemsException if the view's stage lacks what its traits depend on
     * @throws TooLargeException if the diagram would be too large, with the statements that drive it
     */
    public Diagram<Phenotype> diagramInOrder(View view, List<String> order) {
        known(view.traits());
        return DiagramBuilder.phenotypesInOrder(model, view, order);
    }

    /**
     * Returns the diagram of whether one animal shows all that was seen of it, at one stage or several; its draws are one and the same
     * at all of them.
     *
     * @param seen what was seen; a trait for which the model makes no claim is evidence of nothing
     * @param census which animals are counted
     * @return the diagram, whose outcomes are false and true as far as they occur
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if a stage lacks what the traits seen then depend on
     * @throws TooLargeException if the diagram would be too large, with the statements that drive it
     */
    public Diagram<Boolean> matching(List<Sighting> seen, Census census) {
        return matching.get(new Sightings(ImmutableList.copyOf(seen), census), asked -> {
            asked.seen().forEach(one -> known(one.look().traits()));
            return DiagramBuilder.matching(model, Reading.ofAll(asked.seen()), asked.census());
        });
    }

    /**
     * Returns the diagram of who is lost before it is counted, at any locus.
     *
     * @param census which animals are counted
     * @return the diagram, whose outcome is a phenotype that tells nothing, for those that are not lost
     */
    public Diagram<Phenotype> survival(Census census) {
        return survival.get(census, asked -> DiagramBuilder.survival(model, asked));
    }

    /**
     * Returns how likely animals of each sex and expressions are to show all that was seen of one of them.
     *
     * @param seen what was seen of one animal; a trait for which the model makes no claim is evidence of nothing
     * @return disjoint boxes of sex and expressions; animals in none of them cannot show it
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if a stage lacks what the traits seen then depend on
     * @throws TooLargeException if there would be too many boxes
     */
    public List<WeightedBox> evidence(List<Sighting> seen) {
        return evidence(Reading.ofAll(seen), Confusions.none());
    }

    /**
     * Returns how likely animals of each sex and expressions are to be recorded as one was.
     *
     * @param readings records of one animal; a trait for which the model makes no claim is evidence of nothing
     * @param confusions how often a state is recorded as another
     * @return disjoint boxes of sex and expressions; animals in none of them cannot be recorded so
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if a stage lacks what the traits seen then depend on
     * @throws TooLargeException if there would be too many boxes
     */
    public List<WeightedBox> evidence(List<Reading> readings, Confusions confusions) {
        return evidence.get(new Records(ImmutableList.copyOf(readings), confusions), asked -> {
            asked.readings().forEach(one -> known(one.traits()));
            return WeightedBox.of(DiagramBuilder.chances(model, asked.readings(), asked.confusions()));
        });
    }

    /**
     * Returns what the look of a trait rests on, animal by animal.
     *
     * @param trait id of the trait
     * @param stage when the animals are looked at
     * @return the statements and loci that bear on it
     * @throws IllegalArgumentException if the trait is unknown
     * @throws ProblemsException if the stage lacks what the trait depends on
     * @throws TooLargeException if the diagrams would be too large
     */
    public Bearing bearing(String trait, LifeStage stage) {
        return bearings.get(
                look(ImmutableList.of(trait), stage), asked -> BearingBuilder.of(model, trait, asked.stage()));
    }

    /**
     * Returns the genotypes that can show a phenotype, at a stage of which nothing is said: what is seen, as evidence about what is
     * carried.
     *
     * @param phenotype a full or partial phenotype; a trait for which the model makes no claim counts as evidence of nothing
     * @return the set of genotypes that show with some chance every state named, or for which the model makes no claim about it
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if a trait depends on the stage
     * @throws TooLargeException if the set needs too many boxes
     */
    public GenotypeSet showing(Phenotype phenotype) {
        return showing(Sighting.of(phenotype));
    }

    /**
     * Returns the genotypes that can show what was seen at a stage.
     *
     * @param seen a full or partial phenotype with its stage; a trait for which the model makes no claim counts as evidence of nothing
     * @return the set of genotypes that show with some chance every state named, or for which the model makes no claim about it
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if the stage lacks what the traits depend on
     * @throws TooLargeException if the set needs too many boxes
     */
    public GenotypeSet showing(Sighting seen) {
        return showing(ImmutableList.of(seen));
    }

    /**
     * Returns the genotypes that can show all that was seen of one animal. What chance decided once in its life is the same each time.
     *
     * @param seen full or partial phenotypes with their stages; a trait for which the model makes no claim counts as evidence of nothing
     * @return the set of genotypes that show all of it with some chance
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if a stage lacks what the traits depend on
     * @throws TooLargeException if the set needs too many boxes
     */
    public GenotypeSet showing(List<Sighting> seen) {
        return allowedBy(Reading.ofAll(seen));
    }

    /**
     * Returns the genotypes of animals that can be recorded as one was, where records may leave several looks open.
     *
     * @param readings records of one animal; a trait for which the model makes no claim is evidence of nothing
     * @return the set of genotypes that show with some chance, each time, one of the looks recorded
     * @throws IllegalArgumentException if a trait is unknown
     * @throws ProblemsException if a stage lacks what the traits depend on
     * @throws TooLargeException if the set needs too many boxes
     */
    public GenotypeSet allowedBy(List<Reading> readings) {
        return AllowedGenotypes.of(this, readings);
    }

    private ImmutableList<String> known(Collection<String> traits) {
        for (String trait : traits) {
            if (!trait.equals(Sex.VARIABLE) && model.states(trait).isEmpty()) {
                throw new IllegalArgumentException(
                        "no trait \"" + trait + "\" in model " + model + "; it models " + model.visibleTraits());
            }
        }
        return ImmutableSet.copyOf(traits).asList();
    }
}
