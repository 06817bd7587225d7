package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.GenotypeText;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Phase;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.CalledName;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Confusions;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Reading;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.trait.Trait;
import org.geneticsrules.vocabulary.Vocabulary;

/**
 * What is known of one animal: its sex, its genotype, what it looked like at one or several stages of its life, and where it comes from.
 *
 * <p>What is stated of the genotype and what the looks allow are kept apart: a look weighs the genotypes that can show it by the chance
 * with which they do, where chance plays a part. A look may name any trait of the catalogue. Traits that the model rules narrow down the
 * genotypes; the others are kept, since a caution may depend on them; and what was said of a trait too early in life, or in a light, for it to be
 * told is kept too, but is no evidence.
 *
 * <pre>{@code
 * Animal jill = Animal.unknown(compiled).ofSex(Sex.FEMALE).withGenotype("[A B]/[a b]", OmittedLoci.UNKNOWN)
 *         .seen(new Sighting(LifeStage.atMoult(1), Phenotype.of("white hairs", "few")));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Animal {

    private final CompiledModel compiled;
    private final Optional<Sex> sex;
    private final GenotypeSet stated;
    private final Phase phase;
    private final Evident evident;
    private final GenotypeSet genotypes;
    private final Phenotype looks;

    /** Looks of which it showed one, record by record, as names leave them open; cautions go with each. */
    private final ImmutableList<Phenotype> perhaps;

    private final Optional<Population> population;
    private final ImmutableList<String> given;
    private final ImmutableList<String> notices;
    private final Optional<OmittedLoci> omitted;

    /** All that was stated, in this order, so that it can be stated under another model. */
    private final ImmutableList<UnaryOperator<Animal>> told;

    private Animal(
            CompiledModel compiled,
            Optional<Sex> sex,
            GenotypeSet stated,
            Phase phase,
            Evident evident,
            Phenotype looks,
            List<Phenotype> perhaps,
            Optional<Population> population,
            List<String> given,
            List<String> notices,
            Optional<OmittedLoci> omitted,
            List<UnaryOperator<Animal>> told) {
        this.compiled = compiled;
        this.sex = sex;
        this.stated = stated;
        this.phase = phase;
        this.evident = evident;
        this.genotypes = evident.readings().isEmpty() ? stated : stated.and(compiled.allowedBy(evident.readings()));
        this.looks = looks;
        this.perhaps = ImmutableList.copyOf(perhaps);
        this.population = population;
        this.given = ImmutableList.copyOf(given);
        this.notices = ImmutableList.copyOf(notices);
        this.omitted = omitted;
        this.told = ImmutableList.copyOf(told);
    }

    /**
     * Describes an animal of which nothing is known.
     *
     * @param compiled the model
     * @return an animal of either sex that may have any genotype
     */
    public static Animal unknown(CompiledModel compiled) {
        return new Animal(
                compiled,
                Optional.empty(),
                GenotypeSet.all(compiled.model()),
                Phase.unknown(),
                Evident.NOTHING,
                Phenotype.unspecified(),
                ImmutableList.of(),
                Optional.empty(),
                ImmutableList.of(),
                ImmutableList.of(),
                Optional.empty(),
                ImmutableList.of());
    }

    /**
     * Returns the same animal under another model: all that was stated of it is stated there.
     *
     * @param other another model of the same traits
     * @return the animal
     * @throws ProblemsException if what was stated has no meaning there; with the code {@code not-modelled} if the other makes no claim about a
     *     trait that was seen and that this one rules
     */
    public Animal under(CompiledModel other) {
        requireClaims(readings().stream().flatMap(one -> one.traits().stream()).toList(), other.model());
        Animal animal = unknown(other);
        for (UnaryOperator<Animal> one : told) {
            animal = one.apply(animal);
        }
        return animal;
    }

    /**
     * Refuses a model that makes no claim about a trait.
     *
     * @param traits ids of traits, perhaps the sex among them
     * @param model the model
     * @throws ProblemsException with the code {@code not-modelled}
     */
    public static void requireClaims(Collection<String> traits, Model model) {
        Problems problems = new Problems(Stage.MEANING);
        traits.stream()
                .distinct()
                .filter(trait ->
                        !trait.equals(Sex.VARIABLE) && !model.visibleTraits().contains(trait))
                .forEach(trait ->
                        problems.add("not-modelled", "", "model " + model + " makes no claim about \"" + trait + "\""));
        problems.throwIfAny();
    }

    /**
     * Returns this animal as one of known sex.
     *
     * @param known its sex
     * @return the better known animal, without genotypes if it was known to be of the other sex
     */
    public Animal ofSex(Sex known) {
        GenotypeSet left = sex.filter(other -> other != known).isPresent() ? stated.minus(stated) : stated.of(known);
        return new Animal(
                compiled,
                Optional.of(known),
                left,
                phase,
                evident,
                looks,
                perhaps,
                population,
                plus(given, List.of(known.word())),
                notices,
                omitted,
                and(animal -> animal.ofSex(known)));
    }

    /** This animal, if it has one of some pairs at a locus; what is said of it for that reason is added, if anything. */
    Animal having(String locus, List<AllelePair> pairs, List<String> said) {
        return new Animal(
                compiled,
                sex,
                stated.where(locus, pairs),
                phase,
                evident,
                looks,
                perhaps,
                population,
                plus(given, said),
                notices,
                omitted,
                and(animal -> animal.having(locus, pairs, said)));
    }

    /** This animal as what it has to be, since it is a parent; that is no statement to be echoed. */
    Animal as(Sex known) {
        return new Animal(
                compiled,
                Optional.of(known),
                stated.of(known),
                phase,
                evident,
                looks,
                perhaps,
                population,
                given,
                notices,
                omitted,
                and(animal -> animal.as(known)));
    }

    /**
     * Returns this animal with genotype text added to what is known. Alleles of linked loci that the text puts on one strand are kept
     * so, in place of what was known of their group.
     *
     * @param text genotype text of the model, full or partial
     * @param convention what it means that a locus is not named
     * @return the better known animal
     * @throws ProblemsException if the text is not understood
     */
    public Animal withGenotype(String text, OmittedLoci convention) {
        GenotypeText.Parsed parsed = GenotypeText.of(compiled.model()).parse(text, convention);
        boolean partial = parsed.named().size() < compiled.model().loci().size();
        return new Animal(
                compiled,
                sex,
                stated.and(parsed.genotypes()),
                replaced(parsed.phase()),
                evident,
                looks,
                perhaps,
                population,
                plus(given, List.of("genotype " + text.strip())),
                plus(notices, parsed.notices()),
                partial ? Optional.of(convention) : omitted,
                and(animal -> animal.withGenotype(text, convention)));
    }

    private Phase replaced(Phase newer) {
        Map<String, Phase.Strands> strands = new LinkedHashMap<>(phase.strands());
        for (LinkageGroup group : compiled.model().groups().values()) {
            if (group.loci().stream().anyMatch(newer.strands()::containsKey)) {
                strands.keySet().removeAll(group.loci());
            }
        }
        strands.putAll(newer.strands());
        return Phase.of(compiled.model(), strands);
    }

    /**
     * Returns this animal with a look added to what is known, which was seen at a stage that is not stated.
     *
     * @param description states of any traits of the catalogue
     * @return the better known animal
     * @throws ProblemsException as {@link #seen} throws
     */
    public Animal withLooks(Phenotype description) {
        return seen(Sighting.of(description));
    }

    /**
     * Returns this animal with a look added to what is known.
     *
     * @param sighting states of any traits of the catalogue, and when they were seen
     * @return the better known animal
     * @throws ProblemsException if a trait, state, season or light is not in the catalogue, or with the code {@code stage-needed} if what was
     *     seen depends on an age, a moult or a season that is not stated
     */
    public Animal seen(Sighting sighting) {
        Sighting checked = Evident.check(compiled.model(), sighting);
        Stages stages = Stages.of(stated);
        Phenotype described = checked.look()
                .restrictedTo(compiled.model().catalogue().traits().keySet());
        Evident more = evident.and(compiled.model(), "", checked).settled(compiled, stages);
        Map<String, String> all = new LinkedHashMap<>(looks.asMap());
        all.putAll(described.asMap());
        Animal seen = new Animal(
                compiled,
                sex,
                stated,
                phase,
                more,
                Phenotype.from(all),
                perhaps,
                population,
                plus(given, List.of("look " + checked)),
                plus(
                        notices,
                        more.notices()
                                .subList(
                                        evident.notices().size(), more.notices().size())),
                omitted,
                and(animal -> animal.seen(sighting)));
        Optional<Sex> shown = checked.look().state(Sex.VARIABLE).flatMap(Sex::of);
        return shown.map(seen::ofSex).orElse(seen);
    }

    /**
     * Returns this animal with a name that it was called by added to what is known: that it showed, then, one of the looks that the name
     * covers. What is known of its sex by now counts where a name depends on it.
     *
     * @param name the name, as written
     * @param vocabularies the vocabularies at hand
     * @return the better known animal
     * @throws ProblemsException if the name cannot be read, see {@link NamedRecords#of(Pedigree, Collection)}, or with the code {@code
     *     stage-needed} if what it says depends on an age, a moult or a season that is not stated
     */
    public Animal called(CalledName name, Collection<Vocabulary> vocabularies) {
        NamedRecords.Reading read = read(name, vocabularies);
        List<String> said = new ArrayList<>();
        read.notices().forEach(notice -> said.add("of the name it was called by: " + notice));
        Evident more = evident;
        Phenotype described = Phenotype.unspecified();
        if (read.looks().isPresent()) {
            Set<Phenotype> covered = read.looks().get();
            Phenotype first = covered.iterator().next();
            Sighting one = Evident.check(compiled.model(), new Sighting(name.stage(), first, name.light()));
            more = evident.and(compiled.model(), read, one).settled(compiled, Stages.of(stated));
            described = first.restrictedTo(first.traits().stream()
                    .filter(trait ->
                            covered.stream().allMatch(look -> look.state(trait).equals(first.state(trait))))
                    .toList());
        } else if (said.isEmpty()) {
            said.add("the name " + name + " says nothing of its look");
        }
        said.addAll(
                more.notices().subList(evident.notices().size(), more.notices().size()));
        Map<String, String> all = new LinkedHashMap<>(looks.asMap());
        all.putAll(described.asMap());
        List<Phenotype> open = new ArrayList<>(perhaps);
        read.looks().filter(covered -> covered.size() > 1).ifPresent(open::addAll);
        return new Animal(
                compiled,
                sex,
                stated,
                phase,
                more,
                Phenotype.from(all),
                open,
                population,
                plus(given, List.of("called " + name)),
                plus(notices, said),
                omitted,
                and(animal -> animal.called(name, vocabularies)));
    }

    /**
     * Returns this animal as one that showed one of some looks. That narrows down nothing it may carry; what has to be said along with answers
     * about it goes with each of them.
     *
     * @param some what it may have shown
     * @return a copy
     */
    public Animal perhapsShowing(Collection<Phenotype> some) {
        List<Phenotype> open = new ArrayList<>(perhaps);
        open.addAll(some);
        return new Animal(
                compiled,
                sex,
                stated,
                phase,
                evident,
                looks,
                open,
                population,
                given,
                notices,
                omitted,
                and(animal -> animal.perhapsShowing(some)));
    }

    private NamedRecords.Reading read(CalledName name, Collection<Vocabulary> vocabularies) {
        String id = "the animal";
        Individual alone = Individual.of(id).with(name);
        Pedigree records = Pedigree.builder("a-single-animal", "1")
                .add(sex.map(alone::with).orElse(alone))
                .build();
        try {
            return NamedRecords.of(records, vocabularies).of(id).get(0);
        } catch (ProblemsException e) { // of one name there is no place to speak of
            throw new ProblemsException(
                    e.problems().stream().map(problem -> problem.pointing("")).toList());
        }
    }

    /**
     * Returns this animal as one of a population.
     *
     * @param named the population
     * @return the animal with its origin
     */
    public Animal from(Population named) {
        return new Animal(
                compiled,
                sex,
                stated,
                phase,
                evident,
                looks,
                perhaps,
                Optional.of(named),
                plus(given, List.of("population " + named.id())),
                notices,
                omitted,
                and(animal -> animal.from(animal.population(named.id()))));
    }

    private Population population(String id) {
        Population found = compiled.model().populations().get(id);
        if (found == null) {
            throw new ProblemsException(Problems.unknown(
                    Stage.REFERENCES,
                    "unknown-population",
                    "",
                    "population",
                    id,
                    compiled.model().populations().keySet()));
        }
        return found;
    }

    private List<UnaryOperator<Animal>> and(UnaryOperator<Animal> next) {
        List<UnaryOperator<Animal>> all = new ArrayList<>(told);
        all.add(next);
        return all;
    }

    /**
     * Returns this animal as the parent of a mating.
     *
     * @return the parent, weighted by its looks where chance plays a part in them, and by its population if it has one
     */
    public Parent parent() {
        boolean certain = evident.readings().isEmpty()
                || compiled.evidence(evident.readings(), Confusions.none()).stream()
                        .allMatch(box -> box.weight().isOne());
        return certain
                ? new Parent(genotypes, phase, ImmutableList.of(), population)
                : new Parent(stated, phase, evident.readings(), population);
    }

    /**
     * Tells at which of some loci the genotype is not known for certain.
     *
     * @param loci locus ids
     * @return those with more than one possible genotype
     */
    public Set<String> uncertain(Set<String> loci) {
        return loci.stream().filter(locus -> genotypes.pairs(locus).size() != 1).collect(ImmutableSet.toImmutableSet());
    }

    /**
     * Returns the sex.
     *
     * @return the sex, if known
     */
    public Optional<Sex> sex() {
        return sex;
    }

    /**
     * Returns the genotypes that what is stated of genotype and sex allows.
     *
     * @return a set; what the looks say does not restrict it
     */
    public GenotypeSet stated() {
        return stated;
    }

    /**
     * Returns which alleles of linked loci are stated to lie on one strand.
     *
     * @return the phase
     */
    public Phase phase() {
        return phase;
    }

    /**
     * Returns what was seen of the animal and tells something under the model.
     *
     * @return the looks in the traits that the model rules, at stages at which they can be told
     */
    public List<Sighting> sightings() {
        return evident.sightings();
    }

    /**
     * Returns what was seen of the animal and what it was called, as far as it tells something under the model.
     *
     * @return the sightings, then what names say that leave several looks open
     */
    public List<Reading> readings() {
        return evident.readings();
    }

    /**
     * Returns the genotypes the animal may have by all that is known.
     *
     * @return a set; empty if what is known contradicts itself under the model
     */
    public GenotypeSet genotypes() {
        return genotypes;
    }

    /**
     * Returns all that the animal is described to look like.
     *
     * @return the last state described of each trait
     */
    public Phenotype looks() {
        return looks;
    }

    /**
     * Returns the looks of which it showed one, besides what it is described to look like, as records leave them open.
     *
     * @return partial phenotypes, record by record
     */
    public List<Phenotype> perhaps() {
        return perhaps;
    }

    /**
     * Returns the population it is taken to come from.
     *
     * @return the population, if named
     */
    public Optional<Population> population() {
        return population;
    }

    /**
     * Returns what was stated of it.
     *
     * @return in words, to be echoed
     */
    public List<String> given() {
        return given;
    }

    /**
     * Returns what was stated but says nothing under the model.
     *
     * @return sentences
     */
    public List<String> notices() {
        return notices;
    }

    /**
     * Returns how loci not named in its genotype were taken.
     *
     * @return the convention, if a genotype was stated that leaves some out
     */
    public Optional<OmittedLoci> omitted() {
        return omitted;
    }

    /** Traits that were described at a stage that does not tell whether they can be told. */
    Set<String> takenAsTold() {
        return evident.takenAsTold();
    }

    /** What names say that is evidence. */
    List<NamedRecords.Reading> names() {
        return evident.names();
    }

    /** Traits that were described without the light on which it depends whether they can be told. */
    Set<Trait> takenAsLit() {
        return evident.takenAsLit();
    }

    /** Returns what was stated. */
    @Override
    public String toString() {
        return given.isEmpty() ? "an animal of which nothing is known" : String.join(", ", given);
    }

    private static List<String> plus(List<String> before, List<String> more) {
        List<String> all = new ArrayList<>(before);
        all.addAll(more);
        return new ArrayList<>(new LinkedHashSet<>(all));
    }
}
