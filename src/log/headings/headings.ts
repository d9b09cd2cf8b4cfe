/**
 * What words in headings mean, in English, German, French and Spanish. A heading is looked through for the longest
 * phrases first; what they mean together decides the field (`headingFields.ts`).
 *
 * Phrases are written as `headingText` makes them: lower case, no accents, no punctuation but % # $ € +.
 */
export type Concept =
  | "start"
  | "end"
  /** German “Fülldruck”: the pressure that was reached, or the one that the cylinder is filled to at most. */
  | "full"
  | "ordered"
  | "analysed"
  | "added"
  | "settled"
  | "pressure"
  | "oxygen"
  | "helium"
  | "mix"
  | "nitrox"
  | "percent"
  | "temperature"
  | "mod"
  | "depth"
  | "external check"
  | "consent"
  | "neck thread"
  | "valve thread"
  | "money"
  | "date"
  | "time"
  | "cylinder"
  | "number"
  | "serial"
  | "owner"
  | "person"
  | "name"
  | "signature"
  | "certification"
  | "fill"
  | "method"
  | "source"
  | "remarks"
  | "hydro"
  | "visual"
  | "eddy"
  | "clean"
  | "grade"
  | "limit"
  | "test"
  | "last"
  | "earlier"
  /** German forms and words: what is written is more often the next test than the last. */
  | "next by custom"
  | "due"
  | "made"
  | "class"
  | "material"
  | "alloy"
  | "size"
  | "service"
  | "status"
  | "inspected"
  | "counter"
  /** Of price lists and deliveries: such a sheet is no log, whatever pressures it has besides. */
  | "stock"
  | "by";

const PHRASES: readonly (readonly [meaning: readonly Concept[], phrases: string])[] = [
  [["start"], "start|starting|beg|initial|in|before|residual|current|have|arrival|arrived|from|begin|beginning|received|remaining|pre|pre fill|prefill|vor|vorher|anfang|anfangs|rest|restdruck|depart|initiale|initialer|avant|residuel|residuelle|entree|inicial|inicio|antes|entrada"],
  [["start", "pressure"], "p1|restdruck|anfangsdruck|startdruck"],
  [["start", "mix"], "what have in cylinder|have in cylinder|restgas|residual mix|restgemisch"],
  [["end"], "end|ending|final|obtained|obtenu|obtenue|obtenida|obtenido|out|after|finish|finished|filled to|fill to|to|post|post fill|ende|nachher|nach|finale|apres|sortie|fin|despues|salida"],
  [["end", "pressure", "full"], "fulldruck|fuelldruck"],
  [["end", "pressure"], "p2|enddruck|fill pressure|filled pressure|cylinder pressure|tank pressure after the customer analyses|tank pressure|bottle pressure|pression de gonflage|presion de llenado|presion final|hot psi|hot bar|hot"],
  [["settled", "pressure"], "cold psi|cold bar|settled psi|settled bar|cold pressure|settled pressure|cooled pressure|pressure settled|pressure cold|settled|cold|cooled|kalt|abgekuhlt|froid|frio|after cooling"],
  [["ordered"], "ordered|order|target|want|wanted|desired|requested|request|planned|plan|soll|wunsch|gewunscht|bestellt|souhaite|souhaitee|demande|demandee|cible|deseado|deseada|pedido|pedida|objetivo|asked"],
  [["ordered", "mix"], "what want in cylinder|want in cylinder|sollgemisch|wunschgemisch|sollgas"],
  [["analysed"], "analysed|analyzed|analysis|analyse|analysiert|anal|actual|measured|gemessen|ist|mesure|mesuree|reading|tested o2|analisis|analizado|analizada|medido|medida|real|verified"],
  [["analysed", "oxygen"], "fo2|oxygen percentage|o2 percentage|oxygen percent|o2 percent|percent o2|percent oxygen|o2 %|% o2|oxygen %|% oxygen|o2 reading|o2 analysis|sauerstoff %|oxygene %|oxigeno %"],
  [["analysed", "helium"], "fhe|% he|he %|helium %|% helium|he anal|helium percent|he percent"],
  [["analysed", "mix"], "mix %|% mix|ean|eanx|ean %|final mix|mix out|analysed mix|analyzed mix|end mix|istgemisch"],
  [["added"], "added|add|+|zugabe|zugegeben|ajoute|ajoutee|anadido|top"],
  [["added", "oxygen", "pressure"], "o2 to|o2 psi|o2 bar|psi o2|bar o2|o2 stop|o2 top|oxygen to|+ o2|o2 +|oxygen added|o2 added|o2 add|o2 pressure"],
  [["added", "helium", "pressure"], "he to|he psi|he bar|psi he|bar he|helium to|he stop|+ he|he +|helium added|he added|he add|he pressure|helium psi|helium bar"],
  [["pressure"], "pressure|press|druck|pression|presion|gauge|psi|bar"],
  [["oxygen"], "o2|oxygen|sauerstoff|sauerstoffanteil|sauerstoffgehalt|oxygene|oxigeno"],
  [["helium"], "he|helium|helio|heliumanteil|heliumgehalt"],
  [["mix"], "mix|mixture|mischung|gas|gas mix|blend|gemisch|gasgemisch|melange|mezcla|gaz|gas type|type of gas|breathing gas|tx|trimix"],
  [["nitrox"], "nitrox"],
  [["percent"], "%|anteil|gehalt|teneur|contenido|percent|per cent|pct|percentage|prozent"],
  [["temperature"], "temperature|temp|temperatur|temperatura"],
  [["mod"], "mod|maximum operating depth|max operating depth|max depth|maximum depth|profondeur max|prof max|max tiefe|maximale tiefe|profundidad maxima|prof maxima"],
  [["depth"], "depth|dive depth|tiefe|tauchtiefe|profondeur|profundidad"],
  [["external check"], "external check|ext check|exterior check|outside check|external inspection|external visual|pre fill check|prefill check|pre fill inspection|aussenkontrolle|aussere prufung|sichtkontrolle|controle exterieur|inspection externe|inspeccion externa"],
  [["consent"], "consent|owner consent|permission|authorised|authorized|einwilligung|consentement|consentimiento"],
  [["neck thread"], "thread|neck thread|neck|flaschengewinde|halsgewinde|gewinde|filetage|rosca"],
  [["valve thread"], "valve thread|ventilgewinde|filetage robinet|rosca valvula"],
  [["money"], "price|amount|amt|paid|cost|charge|charged|fee|total price|$|€|£|preis|betrag|prix|montant|precio|importe|usd|eur|gbp"],
  [["date"], "date|datum|fecha|jour|day|tag|dia|log date|filled on|date filled|fill date|date of fill|fulldatum|fuelldatum|date de gonflage|fecha de llenado"],
  [["date", "time"], "date time|date / time|date and time|timestamp|datum zeit|date heure|fecha hora"],
  [["time"], "time|zeit|uhrzeit|heure|hora|time of fill|fill time"],
  [["cylinder"], "cylinder|cyl|tank|bottle|flasche|bouteille|bloc|botella|cylinders|tanks|set"],
  [["number"], "number|no|nr|#|num|numero|nummer|n|id|tag|ref"],
  [["cylinder", "number"], "eal number|point id|location #|asset tag|asset|shop number|shop no|shop #|club number|club no|cylinder number|cylinder no|cylinder #|cylinder id|bottle id|bottle number|tank id|tank number|flaschennummer|flaschennr|flaschen nr|flasche nr|n bloc|bloc n|n bouteille|bouteille n|n botella|botella n|marke"],
  [["serial"], "serial|s n|sn|ser no|ser|seriennummer|serien nr|serie|n de serie|no de serie|numero de serie|cylinder serial nos|serial nos|serial number|serial no|serial #|fabriknummer|n serie"],
  [["owner"], "owner|customer|cust|client|propritaire|proprietaire|besitzer|kunde|kundin|eigentumer|inhaber|cliente|propietario|dueno|member|mitglied|membre|socio|diver|taucher|plongeur|buceador"],
  [["name"], "name|nom|nombre"],
  [["person"], "initials|init|operator|tech|technician|staff|employee|attendant|filler|blender|gonfleur|fuller|fueller|bediener|operateur|operador|tecnico|kurzzeichen"],
  [["by"], "by|by whom|who|wer|qui|durch|von|par|por"],
  [["fill", "by"], "filled by|filled by whom|fill by|rempli par|gonfle par|gefullt von|gefullt durch|llenado por|cargado por|fill operator|fill tech|mixed by|blended by"],
  [["analysed", "by"], "analysed by|analyzed by|analyst|analysis by|analyse par|analysiert von|analysiert durch|analizado por|tested by|checked by"],
  [["signature"], "signature|sig|sign|signed|sign off|signoff|customer signature|received by|collected by|picked up by|unterschrift|erhalten|abgeholt|abgeholt von|recu par|firma|recibido por|customer sign off"],
  [["certification"], "certification|cert|cert no|cert #|cert number|card|card #|card no|c card|nitrox cert number|nitrox cert|nitrox certification|brevet|certification no|brevetnummer|zertifikat|licence|certificacion|titulacion"],
  [["fill"], "fill|fills|filling|gonflage|remplissage|fullung|fuellung|llenado|carga|recarga"],
  [["fill", "number"], "fill no|fill number|fill #|fill id|log no|log #|log number|entry|entry no|lfd nr|row|line|ticket|ticket no|ticket #|job|job no"],
  [["method"], "method|how filled|fill method|fill type|type of fill|blend method|blending method|methode|verfahren|fullmethode|fuellmethode|mischverfahren|metodo|procede|technique|technik"],
  [["source"], "source|bank|compressor|comp|comp #|quelle|kompressor|compresseur|compresor|banco|speicher|gas source|supply|air source|whip|panel"],
  [["remarks"], "remarks|remark|comments|comment|notes|note|message|conditional comments|bemerkungen|bemerkung|notiz|notizen|obs|observations|observaciones|remarques|remarque|commentaire|commentaires|notas|comentarios"],
  [["hydro", "next by custom"], "druckprufung|druckpruefung|tuv|tuev|wiederkehrende prufung|festigkeitsprufung"],
  [["hydro"], "hydro|hydrostatic|hyd|hydrotest|requal|requalification|requalified|hydraulic|hydraulic test|hydrostatic test|hydrostatic test date|hydro test|re epreuve|reepreuve|epreuve|retimbrado|retimbre|prueba hidrostatica|hidrostatica|pressure test|retest"],
  [["hydro", "last"], "doh|last hydro test date|last hydrostatic test date|last hydro|last hydro test"],
  [["hydro", "due"], "dnh|next hydrostatic test date|next test due|next hydro|hydro due|hydro exp|hydro expires|date prochaine requalification|prochaine requalification|next test|nachste prufung|nachste druckprufung|naechste pruefung|naechste druckpruefung|proxima prueba|proximo retimbrado"],
  [["visual"], "visual|visual inspection|vip|vis|vi|iv|tiv|v|annual|annual visual|annual inspection|sichtprufung|sichtpruefung|innere prufung|innere pruefung|inspection visuelle|visuelle|visite|inspeccion visual|inspeccion|internal inspection|inspection|internal"],
  [["eddy"], "eddy|eddy current|ve|visual plus|wirbelstrom|courants de foucault|corrientes inducidas"],
  [["clean", "oxygen"], "o2 clean|o2 cleaned|oxygen clean|oxygen cleaned|o2 cleaning|oxygen cleaning|oc|o2 cln|o2clean|sauerstoffrein|degraisse o2|limpio o2|limpieza o2"],
  [["clean"], "clean|cleaned|cleaning|cleanliness|gereinigt|reinigung|degraissage|nettoyage|limpieza|limpio"],
  [["oxygen", "service"], "oxygen service|o2 service|oxygen serv|o2 serv|o2 svc|oxygen svc|service oxygene|sauerstoff tg|druckluft tg"],
  [["grade"], "grade|rating|group|group 1|group 2|g1|g2|group 1 g1|group 2 g2|gruppe|groupe|grupo|o2 rating|oxygen rating|o2 grade|oxygen grade|gas rating|nitrox y n|nitrox yn|nitrox ready|nitrox rated|o2 rated|oxygen rated|rated for"],
  [["limit", "oxygen"], "max o2|max o2 %|max oxygen|maximum o2|o2 max|o2 limit|max % o2|max ean|maximal o2"],
  [["limit"], "max|maximum|limit|maximal"],
  [["test"], "test|tested|testing|tests|pruf|prufung|pruefung|epreuve|prueba"],
  [["test", "date"], "test date|date of test|prufdatum|pruefdatum"],
  [["test", "pressure"], "test pressure|tp|pt|pe|prufdruck|pruefdruck|testing pressures|testing pressures ps and pt|pression d epreuve|presion de prueba"],
  [["earlier"], "previous|earlier|prior|old|former|vorige|vorherige|precedente|anterior"],
  [["last"], "last|latest|letzte|letzter|derniere|dernier|ultima|ultimo"],
  [["due"], "due|next|expires|expiry|expiration|exp|valid until|valid to|valid|test by|until|due date|best before|faellig|fallig|gultig bis|nachste|nachster|naechste|prochaine|prochain|echeance|validite|valable|vence|vencimiento|caduca|caducidad|proxima|proximo"],
  [["made"], "made|manufactured|manufacture|manufacture date|date of manufacture|mfg|mfg date|mfd|dom|born|born on|year of manufacture|first hydro|first test|original hydro|original test|hergestellt|herstellung|herstelldatum|baujahr|fabrication|fabrique|fabricacion|fabricado|ano de fabricacion|commissioned|mise en service"],
  [["class"], "class|spec|specification|dot|dot spec|dot class|tc spec|standard|klasse|zulassung|norme|norma|designation"],
  [["material"], "material|steel alu|al st|werkstoff|matiere|materiau"],
  [["alloy"], "alloy|legierung|alliage|aleacion"],
  [["size"], "size|type|volume|capacity|wc|water cap|water capacity|water volume|vol|litres|liters|litre|liter|ltr|contenance|cuft|cu ft|type and make of cylinders|type and make|cylinder type|tank type|tank size|cylinder size|bottle size|grosse|groesse|volumen|inhalt|flaschentyp|flaschengrosse|flaschengroesse|typ|taille|capacite|tamano|capacidad|volumen l|model"],
  [["service", "pressure"], "service pressure|working pressure|working press|wp|w p|sp|ps|rated|rated pressure|rated capacity in psi|rated capacity|max fill|max pressure|maximum pressure|pression de service|presion de trabajo|presion de servicio|betriebsdruck|arbeitsdruck|nenndruck|pressure rating|rating psi|rated psi|rated bar|design pressure"],
  [["service"], "service|working|servicedruck"],
  [[], "ft|feet|fsw|m|msw|meter|meters|metre|metres|deg|degf|degc|f|c|l|the|of|de|du|der|des|and|und|et|y"],
  [["status"], "status|state|condition|zustand|etat|estado|in service"],
  [["inspected"], "inspected|date inspected"],
  [["stock"], "we pay|we charge|price paid|price charged|unit price|cost price|selling price|purchase price|customer pays|holds|holds when full|gas content|losses|loss|waste|unusable|left over|left in it|sent back at|in or out|what happened|movement|how many|how much|delivered|supplier|stock|in stock|bottles at|standing at|stood at|item|article|artikel|item no"],
  [["counter"], "operating hours|hour meter|filter hrs|filter hours|hours|today|ambient air temperature plus 10 f|ambient|ambient temp|ambient temperature|air temp|air temperature|room temp|room temperature|water temp|water temperature|dew point|drain to|drained to|drain|o2 used|oxygen used|he used|helium used|plus|plus rating|plus rated|counter|stunden|heures|horas|cf|cubic feet used|minutes|duration|qty|quantity|count|anzahl|cantidad"],
]; // prettier-ignore

/** Every phrase with its meaning. */
export const MEANINGS: ReadonlyMap<string, readonly Concept[]> = new Map(
  PHRASES.flatMap(([meaning, phrases]) => phrases.split("|").map((phrase) => [phrase, meaning] as const)),
);

/** No phrase is longer, in words. */
export const LONGEST_PHRASE = Math.max(...[...MEANINGS.keys()].map((phrase) => phrase.split(" ").length));
