package org.geneticsrules.examples;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.QuestionKind;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.json.Documents;
import org.geneticsrules.json.DrawnTruthDocument;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.render.DrawnText;
import org.geneticsrules.render.TextStyle;
import org.geneticsrules.simulation.BreedingPlan;
import org.geneticsrules.simulation.DrawnPedigree;
import org.geneticsrules.simulation.Founder;
import org.geneticsrules.simulation.LitterPlan;
import org.geneticsrules.simulation.TooRareException;
import org.geneticsrules.table.PedigreeTable;
import org.geneticsrules.trait.Phenotype;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Draws litters or a pedigree from a model, for lessons and for trying out what records can tell. */
@Command(
        name = "simulate",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = {
            "Draws animals that never lived: couples with litters, a kennel, or the animals of a pedigree.",
            "They are as they would be if the model were right. Writes what a breeder would have written down of "
                    + "them."
        },
        footer = {
            "",
            "What the animals carry is not in --out, unless a DNA test tells it, so that it can be handed out;",
            "--truth is the answer sheet. Drawn animals are no evidence for a model, and no advice to breed.",
            "",
            "Ten litters of tested carriers of albino:",
            "  genetics simulate --sire \"C/c\" --dam \"C/c\" --population \"few carriers\" --parents-tested C \\",
            "      --couples 10 --kits-seen \"eye colour @ week 8\" --out lesson.csv --truth answers.json",
            "Only litters that were noticed for an albino:",
            "  genetics simulate --population \"many carriers\" --couples 10 --kits-seen \"eye colour @ week 8\" \\",
            "      --ascertainment \"at least one\" --sign \"eye colour: pink\" --out lesson.csv",
            "A kennel of four founders over three generations:",
            "  genetics simulate --population \"few carriers\" --males 2 --females 2 --generations 3 --litters 4 \\",
            "      --parents-seen \"eye colour\" --kits-seen \"eye colour\" --out lesson.json"
        })
final class SimulateCommand implements Callable<Integer> {

    private static final int MOST_FOUNDERS = 1000;
    private static final int MOST_GENERATIONS = 100;

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private DrawingOptions options;

    @Option(
            names = "--couples",
            paramLabel = "N",
            description = "How many couples, unrelated to one another. Default: 1.")
    private @Nullable Integer couples;

    @Option(
            names = "--litters",
            paramLabel = "N",
            defaultValue = "1",
            description = "How many litters each couple has, or each generation of a kennel. Default: 1.")
    private int litters = 1;

    @Option(
            names = "--generations",
            paramLabel = "N",
            description = "A kennel of so many generations after its founders, mated by chance, "
                    + "relatives too; it is no plan for animals.")
    private @Nullable Integer generations;

    @Option(names = "--males", paramLabel = "N", description = "How many founders of the kennel are male. Default: 2.")
    private @Nullable Integer males;

    @Option(names = "--females", paramLabel = "N", description = "How many are female. Default: 2.")
    private @Nullable Integer females;

    @Option(
            names = "--plan",
            paramLabel = "FILE",
            description = "A pedigree, .json or .csv, of which only the structure is taken: who "
                    + "comes from whom. Founders come from their populations, or from "
                    + "--population.")
    private @Nullable Path plan;

    @Option(
            names = "--founder",
            paramLabel = "ID=GENOTYPE",
            description = "What a founder of --plan carries, for example \"Tarn=C/c\"; once for each.")
    private List<String> founders = new ArrayList<>();

    @Option(
            names = "--out",
            paramLabel = "FILE",
            description = {
                "Where to write the records: a .csv table or a .json document.",
                "Default: nowhere, only the summary is printed."
            })
    private @Nullable Path out;

    @Option(
            names = "--truth",
            paramLabel = "FILE",
            description =
                    "Where to write what the animals truly carry and show, a .json " + "document. Default: nowhere.")
    private @Nullable Path truth;

    @Override
    public Integer call() {
        Answers answers = choice.answers();
        Model model = answers.compiled().model();
        Path file = out;
        boolean json = file != null && OutputFile.isJson("--out", file);
        if (truth != null && !OutputFile.isJson("--truth", truth)) {
            throw new InputException("problem: --truth " + truth + ": expected a name that ends in .json\n");
        }
        OutputFile.apart(spec, "--out", file);
        OutputFile.apart(spec, "--truth", truth);
        DrawingOptions.Plan asked = options.read(answers.compiled());
        DrawnPedigree drawn;
        try {
            drawn = stream(asked, model).findFirst().orElseThrow();
        } catch (TooRareException e) {
            throw new InputException("problem: " + e.getMessage() + "\n");
        }
        if (truth != null) {
            OutputFile.write(
                    truth,
                    Documents.write(
                            DrawnTruthDocument.of(drawn, model, asked.drawing().looks())));
        }
        if (file != null) {
            OutputFile.write(file, json ? Documents.write(drawn.records()) : PedigreeTable.write(drawn.records()));
        }
        spec.commandLine()
                .getOut()
                .print(DrawnText.of(
                        drawn, model.reference(), cautions(answers, drawn.records()), TextStyle.standard()));
        return ExitCodes.ANSWERED;
    }

    private Stream<DrawnPedigree> stream(DrawingOptions.Plan asked, Model model) {
        if (plan != null) {
            return ofPlan(plan, asked, model);
        }
        if (!founders.isEmpty()) {
            throw new InputException("problem: --founder says what animals of a --plan carry; state one\n");
        }
        if (generations != null) {
            return ofKennel(generations, asked);
        }
        if (males != null || females != null) {
            throw new InputException(
                    "problem: --males and --females are founders of a kennel; say with --generations how long it goes on\n");
        }
        int number = couples == null ? 1 : Inputs.count("--couples", couples, 1, LitterPlan.MOST);
        int each = Inputs.count("--litters", litters, 1, LitterPlan.MOST / number);
        return asked.drawing()
                .couples(new LitterPlan(asked.sires(), asked.dams(), number, each, asked.size(), asked.counted()));
    }

    private Stream<DrawnPedigree> ofKennel(int number, DrawingOptions.Plan asked) {
        if (couples != null) {
            throw new InputException(
                    "problem: --couples have litters, and --generations make a kennel; state one of them\n");
        }
        return asked.drawing()
                .kennels(new BreedingPlan(
                        Collections.nCopies(
                                Inputs.count("--males", males == null ? 2 : males, 1, MOST_FOUNDERS), asked.sires()),
                        Collections.nCopies(
                                Inputs.count("--females", females == null ? 2 : females, 1, MOST_FOUNDERS),
                                asked.dams()),
                        Inputs.count("--generations", number, 1, MOST_GENERATIONS),
                        Inputs.count("--litters", litters, 1, MOST_FOUNDERS),
                        asked.size(),
                        asked.counted()));
    }

    private Stream<DrawnPedigree> ofPlan(Path file, DrawingOptions.Plan asked, Model model) {
        if (couples != null || generations != null || options.describesParents()) {
            throw new InputException(
                    "problem: --plan says who the parents are; describe them with --founder and" + " --population\n");
        }
        Pedigree structure = PedigreeChoice.read(file, model, Shelf.open().vocabularies(model))
                .pedigree();
        Map<String, Founder> known = new LinkedHashMap<>();
        for (String one : founders) {
            int equals = one.indexOf('=');
            String id = equals < 1 ? one : one.substring(0, equals).strip();
            if (equals < 1 || !structure.founders().contains(id)) {
                Problem problem =
                        Problems.unknown(Stage.REFERENCES, "unknown-founder", "", "founder", id, structure.founders());
                throw new InputException(ProblemText.of("--founder", one, List.of(problem)));
            }
            Founder carries = Inputs.reading(
                    "--founder", one, () -> Founder.of(Genotype.parse(model, one.substring(equals + 1))));
            known.put(
                    id,
                    origin(structure.individual(id), asked).map(carries::from).orElse(carries));
        }
        return asked.drawing().pedigrees(structure, known);
    }

    private static Optional<String> origin(Individual founder, DrawingOptions.Plan asked) {
        return founder.population().or(() -> asked.population().map(one -> one.id()));
    }

    private static List<Caution> cautions(Answers answers, Pedigree records) {
        Set<Phenotype> parents = new LinkedHashSet<>();
        Set<Phenotype> kits = new LinkedHashSet<>();
        records.individuals().values().forEach(one -> {
            Set<Phenotype> looks = records.litterOf(one.id()).isPresent() ? kits : parents;
            one.observations().forEach(seen -> looks.addAll(seen.looks()));
        });
        return answers.cautions(Situation.of(QuestionKind.EXERCISE.word())
                .with(Role.PARENT, new ArrayList<>(parents))
                .with(Role.OFFSPRING, new ArrayList<>(kits)));
    }
}
