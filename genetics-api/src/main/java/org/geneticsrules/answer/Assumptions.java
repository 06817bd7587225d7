package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.linkage.LinkageGroup;
import org.geneticsrules.linkage.Recombination;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.pedigree.NamedRecords;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Taxon;
import org.geneticsrules.trait.Trait;

/** The assumptions an answer makes, each once. */
final class Assumptions {

    private final Map<String, Assumption> made = new LinkedHashMap<>();
    private final Set<Trait> lit = new LinkedHashSet<>();
    private final List<NamedRecords.Reading> names = new ArrayList<>();

    Assumptions model(Model model) {
        return add(
                "model",
                "The rules of model " + model + " hold.",
                "Another model of the same traits may answer otherwise; \"impossible\" means impossible under this model.");
    }

    /** What it means that a genotype leaves loci out; {@code who} is the animal in words, with its article if it has one. */
    Assumptions omitted(String who, Animal animal) {
        animal.omitted()
                .ifPresent(convention -> add(
                        "omitted-loci-" + bare(who),
                        "In the genotype of " + who + ", " + convention.meaning() + ".",
                        convention == OmittedLoci.UNKNOWN
                                ? "Naming them narrows the answer."
                                : "If " + who + " carries something else there, the answer changes."));
        return this;
    }

    /** The stage at which animals are looked at, and what is taken to be told of traits then. */
    Assumptions stage(String who, LifeStage stage, CompiledModel compiled, Set<String> takenAsTold) {
        if (!stage.equals(LifeStage.unstated())) {
            add(
                    "stage",
                    "The look of " + who + " is that at " + stage + ".",
                    "Earlier, later or in another season it may be another.");
        }
        return told(compiled, takenAsTold);
    }

    Assumptions told(CompiledModel compiled, Set<String> takenAsTold) {
        for (String trait : takenAsTold) {
            add(
                    "told-in-time-" + trait.replace(' ', '-'),
                    "\"" + trait + "\" is looked at from " + Evident.from(compiled.model(), trait)
                            + " on, when it can be told.",
                    "What is read of it earlier is no evidence, and no answer about it holds then; look again later.");
        }
        return this;
    }

    /** That looks whose light is not stated were made in one in which their traits can be told; all are said together. */
    Assumptions lit(Set<Trait> takenAsLit) {
        lit.addAll(takenAsLit);
        return this;
    }

    /** That names that were used as evidence mean what vocabularies say; all are said together. */
    Assumptions named(List<NamedRecords.Reading> used) {
        names.addAll(used);
        return this;
    }

    /** That what chance decides, it decides for each animal by itself. */
    Assumptions chance() {
        return add(
                "independent-chances",
                "What the model leaves to chance is decided once in the life of each animal, for each by itself.",
                "If something that litter-mates share plays a part, their looks agree more often.");
    }

    Assumptions parentage(PossibleSires sires, Taxon.Young young) {
        if (sires.males().size() == 1) {
            return add(
                    "parentage",
                    "The sire and the dam named are the parents of " + young.every() + ".",
                    "With another sire, or a foster dam recorded as mother, none of these chances applies.");
        }
        add(
                "parentage",
                "The dam named is the mother of " + young.every() + ", and nobody but the males named is a sire.",
                "With another sire, or a foster dam recorded as mother, none of these chances applies.");
        String access = sires.access().stream().map(Object::toString).collect(Collectors.joining(", "));
        return sires.perKit()
                ? add(
                        "sire-per-kit",
                        "One of these males is the sire of each of the " + young.many()
                                + " by itself, with the chances " + access + ".",
                        "If one of them sired the whole litter, litter-mates agree more often.")
                : add(
                        "one-sire",
                        "One of these males is the sire of the whole litter, with the chances " + access + ".",
                        "If litter-mates may have different sires, they agree less often.");
    }

    /** How the loci read are handed down. */
    Assumptions inheritance(Model model, Set<String> read, Taxon.Young young, boolean weighted) {
        Set<String> groups = new LinkedHashSet<>();
        int alone = 0;
        for (String locus : read) {
            if (model.groupOf(locus).isPresent()) {
                groups.add(model.groupOf(locus).orElseThrow().id());
            } else {
                alone++;
            }
        }
        if (groups.size() + alone > 1) {
            String loci = groups.isEmpty()
                    ? "The " + read.size() + " loci read are inherited independently of one another."
                    : "Loci of different linkage groups, and those in none, are inherited independently of one another.";
            add(
                    "unlinked-loci",
                    loci,
                    "If some lay close together on a chromosome, looks of the parents would stay together more often.");
        }
        groups.forEach(id -> recombination(Objects.requireNonNull(model.groups().get(id)), read));
        boolean mutates =
                read.stream().anyMatch(locus -> !model.locus(locus).mutation().isEmpty());
        if (!mutates) {
            return add(
                    "no-new-mutation",
                    "No allele changes between parent and " + young.one() + ".",
                    "A new mutation can give looks that are impossible here, very rarely.");
        }
        return weighted
                ? add(
                        "mutation-counted",
                        "Alleles change between parent and " + young.one() + " as often as the model states.",
                        "Rates of mutation are known roughly at best; rare looks rest on them.")
                : add(
                        "mutation-left-out",
                        "What is called possible is so without a new mutation.",
                        "The model states mutation, which can give looks that are not listed, very rarely.");
    }

    private void recombination(LinkageGroup group, Set<String> read) {
        if (group.loci().stream().filter(read::contains).count() > 1) {
            boolean fractions = group.recombination() instanceof Recombination.Fractions;
            add(
                    "recombination-" + group.id().replace(' ', '-'),
                    "The loci "
                            + String.join(
                                    ", ",
                                    group.loci().stream().filter(read::contains).toList())
                            + " of group \"" + group.id() + "\" recombine as the model states"
                            + (fractions && group.loci().size() > 2
                                    ? ", a crossover in one interval making none elsewhere more or less likely."
                                    : "."),
                    "Recombination differs between parents and places; a closer or a wider interval gives other chances.");
        }
    }

    /** The words for an animal as a part of an id: without the article, and without spaces. */
    private static String bare(String who) {
        return (who.startsWith("the ") ? who.substring(4) : who).replace(' ', '-');
    }

    /** The phase of linked loci of a parent, where it is not known. */
    Assumptions phase(String who, Animal parent, Sex sex, Model model, Set<String> read) {
        for (LinkageGroup group : model.groups().values()) {
            List<String> open = group.loci().stream()
                    .filter(read::contains)
                    .filter(locus -> group.transmission().strands(sex) == 2)
                    .filter(locus -> parent.genotypes().pairs(locus).stream().anyMatch(AllelePair::isHeterozygous))
                    .toList();
            boolean unknown =
                    open.stream().anyMatch(locus -> parent.phase().at(locus).isEmpty());
            if (open.size() > 1 && unknown) {
                add(
                        "unknown-phase-" + bare(who),
                        "Where " + who
                                + " has two alleles at each of two neighbouring linked loci, both ways in which"
                                + " they may lie on its strands are equally likely.",
                        "To know the strands, from its parents or its young, narrows the answer.");
            }
        }
        return this;
    }

    /** That a test speaks of carriers only. */
    Assumptions power(Taxon.Young young) {
        return add(
                "power-not-belief",
                "The numbers say how often a carrier would be found out, every one of the " + young.many()
                        + " being looked at.",
                "How likely an animal whose " + young.many()
                        + " have shown nothing is to be clear depends on how likely it was before; one shown in error, or"
                        + " left out because it looked inconvenient, undoes the numbers.");
    }

    Assumptions chosenBlindly() {
        return add(
                "mates-not-chosen",
                "Mates that are known by their parents are any of their young that look as stated.",
                "If they were chosen for what their own young showed, they carry more or less.");
    }

    Assumptions sexes(Taxon.Young young) {
        return add(
                "equal-sexes",
                "Half of the " + young.many() + " conceived are daughters, half are sons.",
                "Another ratio of the sexes shifts the chances of all that depends on the sex.");
    }

    Assumptions allLive(Taxon.Young young) {
        return add(
                "equal-viability",
                "All genotypes are equally likely to be born and to be scored.",
                "If some " + young.many() + " die before they are seen, the others make up larger shares.");
    }

    Assumptions someDie(String census, Taxon.Young young) {
        return add(
                "viability",
                "Some " + young.many() + " are lost before they are " + census
                        + ", as the model states; chances are shares of" + " those that are.",
                "With other losses the shares of the " + young.many() + " that are left change.");
    }

    Assumptions litterSize(LitterSize size) {
        if (size.kits().outcomes().size() > 1) {
            add(
                    "litter-size",
                    "Sizes of litters are distributed as in \"" + size.name() + "\""
                            + size.source().map(source -> " (" + source + ")").orElse("")
                            + ", whatever the parents carry.",
                    "Dams and lines differ; give a number to ask about one litter.");
        }
        return this;
    }

    Assumptions weighting(Population population, boolean linked, boolean viability) {
        add(
                "population-" + population.id().replace(' ', '-'),
                "The alleles of uncertain parents are as frequent as in population \"" + population.id() + "\""
                        + population.title().map(title -> " (" + title + ")").orElse("") + ".",
                "Other frequencies give other chances; compare the populations listed.");
        add(
                "hardy-weinberg",
                "Within that population, genotypes stand in Hardy-Weinberg proportions"
                        + (viability ? " among those conceived, of whom those that live" : "")
                        + ", restricted to what is known.",
                "Animals mated by coat are not in these proportions; carriers may be more or less common.");
        if (linked) {
            add(
                    "linkage-equilibrium",
                    "Within that population, alleles of linked loci are combined at random.",
                    "In young or small populations they are not; what one locus shows then tells of the other.");
        }
        return add(
                "unrelated-parents",
                "The uncertain parents are unrelated to each other.",
                "Relatives share hidden alleles, which makes recessive looks more likely.");
    }

    private Assumptions add(String id, String text, String otherwise) {
        made.putIfAbsent(id, new Assumption(id, text, otherwise));
        return this;
    }

    List<Assumption> list() {
        List<Assumption> all = new ArrayList<>(made.values());
        if (!names.isEmpty()) {
            all.add(Assumption.ofNames(names));
        }
        if (!lit.isEmpty()) {
            all.add(Assumption.ofLight(lit));
        }
        return all;
    }
}
