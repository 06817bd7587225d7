package org.geneticsrules.inference;

import com.google.common.collect.ImmutableList;
import java.util.Collection;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Confusions;

/**
 * Asks what the animals of a pedigree may carry, and what they probably carry.
 *
 * <pre>{@code
 * Conclusions found = Inference.of(compiled, pedigree).from("even").conclude(Set.of("C"));
 * found.at("Kit 3", "C").orElseThrow().carries("c");
 * }</pre>
 *
 * <p>Founders and parents who are not recorded are taken to be unrelated, and to be of their populations in Hardy-Weinberg proportions and
 * linkage equilibrium. Each kit is one of those that live.
 *
 * <p>Immutable and thread-safe.
 */
public final class Inference {

    /** The cells that all tables of one part may have together unless stated otherwise: 128 MB of numbers. */
    public static final double USUAL_CELLS = 1 << 24;

    private final Prepared prepared;
    private final CompiledModel compiled;
    private final Pedigree pedigree;
    private final Confusions confusions;
    private final Optional<String> population;
    private final boolean mutating;

    /** Whether alleles that have changed count among what is possible. */
    private final boolean changing;

    private final Effort effort;

    private Inference(
            Prepared prepared,
            Pedigree pedigree,
            Confusions confusions,
            Optional<String> population,
            boolean mutating,
            boolean changing,
            Effort effort) {
        this.prepared = prepared;
        this.compiled = prepared.compiled();
        this.pedigree = pedigree;
        this.confusions = confusions;
        this.population = population;
        this.mutating = mutating;
        this.changing = changing;
        this.effort = effort;
    }

    /**
     * Returns questions about a pedigree.
     *
     * @param compiled the model of inheritance
     * @param pedigree the animals and what was recorded of them
     * @return questions without naming errors, by the populations that the pedigree states
     * @throws ProblemsException if the records name what the model does not know
     */
    public static Inference of(CompiledModel compiled, Pedigree pedigree) {
        check(pedigree, compiled);
        return new Inference(
                new Prepared(compiled), pedigree, Confusions.none(), Optional.empty(), true, false, Effort.usual());
    }

    private static void check(Pedigree pedigree, CompiledModel compiled) {
        List<Problem> problems = pedigree.problemsUnder(compiled.model());
        if (!problems.isEmpty()) {
            throw new ProblemsException(problems);
        }
    }

    /**
     * Returns the same questions about another pedigree, or about the same with other records. What was found out about the model, and about
     * looks met before, is not worked out again.
     *
     * @param other the animals and what was recorded of them
     * @return a copy
     * @throws ProblemsException if the records name what the model does not know
     */
    public Inference about(Pedigree other) {
        check(other, compiled);
        return new Inference(prepared, other, confusions, population, mutating, changing, effort);
    }

    /**
     * Returns the same questions under another model.
     *
     * @param other another model of the same traits
     * @return a copy
     * @throws ProblemsException if the records name what that model does not know
     * @throws IllegalArgumentException if a population was named for all that the other model does not have
     */
    public Inference under(CompiledModel other) {
        check(pedigree, other);
        Inference there =
                new Inference(new Prepared(other), pedigree, confusions, Optional.empty(), mutating, changing, effort);
        return population.map(there::from).orElse(there);
    }

    /**
     * Returns the same questions with naming errors.
     *
     * @param named how often a state is recorded as another
     * @return a copy
     */
    public Inference with(Confusions named) {
        return new Inference(prepared, pedigree, named, population, mutating, changing, effort);
    }

    /**
     * Returns the same questions with a population for founders and unrecorded parents for whom the pedigree states none.
     *
     * @param id id of a population of the model
     * @return a copy
     * @throws IllegalArgumentException if the model has no such population
     */
    public Inference from(String id) {
        if (!compiled.model().populations().containsKey(id)) {
            throw new IllegalArgumentException("model " + compiled.model() + " has no population \"" + id
                    + "\"; expected one of " + compiled.model().populations().keySet());
        }
        return new Inference(prepared, pedigree, confusions, Optional.of(id), mutating, changing, effort);
    }

    /**
     * Returns the same questions without mutation: what animals may be if no allele has changed.
     *
     * @return a copy
     */
    public Inference withoutMutation() {
        return new Inference(prepared, pedigree, confusions, population, false, false, effort);
    }

    /**
     * Returns the same questions with mutation also where it is asked what is possible, and what contradicts itself; there it is left out
     * else, since it makes nearly everything possible.
     *
     * @return a copy
     */
    public Inference withMutation() {
        return new Inference(prepared, pedigree, confusions, population, true, true, effort);
    }

    /**
     * Returns the same questions with another limit on what is calculated exactly.
     *
     * @param most the cells that all tables of one part may have together, eight bytes each; 0 for none, and then no more is told of what is
     *     possible or contradictory than striking out shows
     * @return a copy
     */
    public Inference within(double most) {
        return new Inference(prepared, pedigree, confusions, population, mutating, changing, effort.of(most));
    }

    /**
     * Returns the same questions with sampling of what is too large to be calculated exactly ({@link #within}). Without it such numbers are
     * not given. What each animal carries at each locus is sampled; what several carry together, and what is possible, never is.
     *
     * @param how the seed and the limits
     * @return a copy
     */
    public Inference sampling(Sampling how) {
        return new Inference(prepared, pedigree, confusions, population, mutating, changing, effort.sampled(how));
    }

    /**
     * Returns the same questions, in which loci that nothing ties are looked at by several threads at once (those of the common pool of
     * {@link java.util.concurrent.ForkJoinPool}). The answers are the same, number by number.
     *
     * @return a copy
     */
    public Inference inParallel() {
        return new Inference(prepared, pedigree, confusions, population, mutating, changing, effort.inParallel());
    }

    /**
     * Returns the same questions with somebody who watches, for example for a time to be over. Unless stated otherwise, an interruption of
     * the thread is watched for, and ends a question with a {@link java.util.concurrent.CancellationException}.
     *
     * @param by is called now and then by the threads that answer, mostly many times a second; what it throws ends the question
     * @return a copy
     */
    public Inference watched(Runnable by) {
        return new Inference(prepared, pedigree, confusions, population, mutating, changing, effort.watched(by));
    }

    /**
     * Returns what should be known of the records, whatever is asked of them. No population is needed.
     *
     * @return records that are no evidence, or only under an assumption
     */
    public List<Notice> notices() {
        return ImmutableList.copyOf(prepared.records(confusions).notices(Members.of(pedigree, Optional.empty())));
    }

    /**
     * Concludes about every locus of the model.
     *
     * @return what the animals carry
     * @throws ProblemsException if a founder has no population, or one without frequencies that are needed
     */
    public Conclusions conclude() {
        return conclude(compiled.model().loci().keySet());
    }

    /**
     * Concludes about some loci.
     *
     * @param loci ids of loci
     * @return what the animals carry there, by all records
     * @throws IllegalArgumentException if the model has no such locus
     * @throws ProblemsException if a founder has no population, or one without frequencies that are needed
     */
    public Conclusions conclude(Collection<String> loci) {
        Members members = Members.of(pedigree, population);
        Records records = prepared.records(confusions);
        Groups question = question(loci, members, records);
        return new Conclusions(pedigree, members, question, effort, records.notices(members));
    }

    /**
     * Concludes about some loci, and about no others that records speak of, unless records tie them together. That is less work where only
     * few of many loci are asked for; the chance of all records is not found.
     *
     * @param loci ids of loci
     * @return what the animals carry there, by all records; {@link Conclusions#logLikelihood} counts what speaks of these loci
     * @throws IllegalArgumentException if the model has no such locus
     * @throws ProblemsException if a founder has no population, or one without frequencies that are needed
     */
    public Conclusions concludeOnly(Collection<String> loci) {
        Members members = Members.of(pedigree, population);
        Records records = prepared.records(confusions);
        Groups question = question(loci, members, records).with(loci);
        return new Conclusions(pedigree, members, question, effort, records.notices(members));
    }

    /**
     * Foresees what {@link #concludeOnly} would cost. The small tables of what each parent, kit and record says are made, but none is summed,
     * and no more is counted than is allowed ({@link #within}).
     *
     * @param loci ids of loci
     * @return for each set of relatives the cells of tables, in the order of the pedigree
     * @throws IllegalArgumentException if the model has no such locus
     * @throws ProblemsException if a founder has no population, or one without frequencies that are needed
     */
    public List<Cost> costs(Collection<String> loci) {
        Members members = Members.of(pedigree, population);
        Groups question = question(loci, members, prepared.records(confusions));
        return Costs.of(question.with(loci), effort);
    }

    /**
     * Concludes about several animals together.
     *
     * @param individuals ids of animals
     * @param loci ids of loci
     * @return the chance of each combination of what they carry there, by all records
     * @throws IllegalArgumentException if there is no such animal, or the model has no such locus
     * @throws ProblemsException if a founder has no population, or one without frequencies that are needed
     */
    public JointPosterior together(Collection<String> individuals, Collection<String> loci) {
        Members members = Members.of(pedigree, population);
        Map<String, Integer> asked = new LinkedHashMap<>();
        for (String id : individuals) {
            asked.put(pedigree.individual(id).id(), members.number(id));
        }
        return Together.of(question(loci, members, prepared.records(confusions)), asked, loci, effort);
    }

    /**
     * Returns which genotypes an animal's own records leave at a locus, if that is all they say of it. Relatives and frequencies are left out.
     *
     * @param individual id of an animal
     * @param locus id of a locus
     * @return genotypes with which animals can live, each of which makes what was seen and tested of the animal as likely, whatever it carries elsewhere; none if its records
     *     contradict one another; empty if they say more or less than that: where a look hangs on two loci together, where chance or errors
     *     of naming have a part in it, and where a test may be wrong
     * @throws IllegalArgumentException if there is no such animal, or the model has no such locus
     */
    public Optional<Set<AllelePair>> ownRecords(String individual, String locus) {
        Individual one = pedigree.individual(individual);
        Evidence evidence = prepared.records(confusions).of(one);
        Model model = compiled.model();
        return OwnRecords.at(evidence, one.sex(), model.locus(locus), model.living(locus, one.sex()));
    }

    /**
     * Asks about litters by themselves, under the same assumptions; the pedigree is left out.
     *
     * @return the chances of litters
     */
    public LitterLikelihood litters() {
        return new LitterLikelihood(this);
    }

    /** The cells that all tables of one part may have together. */
    double mostCells() {
        return effort.cells();
    }

    /**
     * Returns the loci of the model.
     *
     * @return their ids, in the order of its document
     */
    public Set<String> loci() {
        return compiled.model().loci().keySet();
    }

    /**
     * Finds out which records contradict one another. No population is needed, since frequencies are left out.
     *
     * @return the contradictions, or none
     */
    public Contradictions contradictions() {
        return Contradictions.of(() -> new Fitting(prepared, pedigree, confusions, changing, effort));
    }

    /**
     * Finds out which genotypes animals can have. No population is needed, since frequencies are left out.
     *
     * @param locus id of a locus
     * @return the possibilities there, by all records
     * @throws IllegalArgumentException if the model has no such locus
     */
    public Possibilities possible(String locus) {
        Model model = compiled.model();
        Members members = Members.of(pedigree, Optional.empty());
        Records records = prepared.records(confusions);
        List<Evidence> evidence = records.of(members);
        Kinds kinds = Kinds.of(model, members, evidence);
        Groups question = new Groups(
                prepared.rules(changing, false),
                members,
                evidence,
                kinds,
                mattering(model, kinds, List.of(model.locus(locus).id())));
        return new Possibilities(pedigree, model.locus(locus), members, question, effort);
    }

    /** The question about some loci, sorted into groups. */
    Groups question(Collection<String> loci) {
        return question(loci, Members.of(pedigree, population), prepared.records(confusions));
    }

    /** The question about all loci, of which only what needs no frequencies will be asked. */
    Groups unweighed() {
        return laidOut(loci(), Members.of(pedigree, population), prepared.records(confusions), false);
    }

    private Groups question(Collection<String> loci, Members members, Records records) {
        return laidOut(loci, members, records, true);
    }

    private Groups laidOut(Collection<String> loci, Members members, Records records, boolean weighed) {
        Model model = compiled.model();
        loci.forEach(model::locus);
        List<Evidence> evidence = records.of(members);
        Kinds kinds = Kinds.of(model, members, evidence);
        Set<String> matter = mattering(model, kinds, loci);
        if (weighed) {
            requireFrequencies(members, matter);
        }
        return new Groups(prepared.rules(mutating, true), members, evidence, kinds, matter);
    }

    /** The loci that have to be followed: those asked for, those that records read, and those at which animals die. */
    static Set<String> mattering(Model model, Kinds kinds, Collection<String> asked) {
        Set<String> matter = new LinkedHashSet<>(asked);
        kinds.records().forEach(one -> matter.addAll(one.loci()));
        model.viability().values().forEach(one -> matter.add(one.locus()));
        if (matter.isEmpty()) {
            // records of sexes alone are held to one locus of which nothing is known
            matter.add(model.loci().keySet().iterator().next());
        }
        return matter;
    }

    private void requireFrequencies(Members members, Set<String> matter) {
        Model model = compiled.model();
        Problems problems = new Problems(Stage.MEANING);
        Set<String> looked = new HashSet<>();
        for (Member member : members.all()) {
            if (!member.isFounder()) {
                continue;
            }
            if (member.population().isEmpty()) {
                problems.add(
                        "population-needed",
                        member.recorded()
                                .map(one -> Pointer.of("individuals", one.id(), "population"))
                                .orElse(""),
                        who(member) + " has no recorded parents and states no population",
                        model.populations().isEmpty()
                                ? "a model with a population"
                                : "a population for all who state none, such as "
                                        + String.join(", ", model.populations().keySet()));
                continue;
            }
            Population stated = model.populations().get(member.population().get());
            if (stated == null || !looked.add(stated.id())) {
                continue;
            }
            List<String> missing = matter.stream()
                    .filter(locus -> !stated.frequencies().containsKey(locus))
                    .toList();
            if (!missing.isEmpty()) {
                problems.add(
                        "population-needed",
                        Pointer.of("populations", stated.id(), "frequencies"),
                        "population " + stated.id() + " states no frequencies at " + String.join(", ", missing)
                                + ", which " + who(member) + " is weighed by",
                        "frequencies there");
            }
        }
        problems.throwIfAny();
    }

    private static String who(Member member) {
        return member.recorded().map(Individual::id).orElse("an unrecorded parent");
    }
}
